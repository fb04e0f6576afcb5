/** Everyday words that are nobody's slip for a word of the catalogs: `never` is not a lever, a `list` does not lift. */
export const everyday: ReadonlySet<string> = new Set(
  `able above again alone along already always among angry another answer anyone anything anyway awesome baby badly basic because become before began behind
  being believe below beside best bigger bother break bring brother buddy build building built call called came cannot care caught cause chance cheap cheaper
  cheapest check checked choice choose clear close club coffee cold come cool could couple crazy curious dude early easy eight either email enough even ever every
  everyone everything exact expect expensive fact family fault favor favorite feed feel felt figure find fine first five folks food forever forget forgot
  friend friends full funny game gave glad good gosh great group guess guys hand handle happen hard hate haven hear heard hello help hence here hold home
  honest hope hour hours house idea important inside into issue items join keep kept kidding kind knew know known large last late later laugh learn least left
  legal lend less letter life like line list listen little live lives local logic lonely long look looks lose lost loud love lovely lunch maker many math maths
  maybe mean means meant meet member memory message might mind mine minute minutes missing mistake moment money month more morning most mostly move much must
  name near nearly need never news next nice night nine nobody none noon normal nothing notice number often okay once only open order other others outside over
  owner paid paint paper park party past pause people perfect perhaps person phone photo pick picture place plain plan play please plenty point poor possible post
  price pretty prize probably problem promise proof proper pull question quick quiet quite race racing rain rather read ready real really reason record remember
  remind reply rest result right road room rough safe said same sale save says school second seem seen self sell send sense serious seven several shall share
  sharp shop short should show side sign silly simple since site sits sitting size sleep slow small smart smile some someone something sometimes soon sorry sound
  speak spend spent spoke stage stand start started state stay steal still stop stopped store story straight strange street strong stuff stupid such sudden
  sunday sure swear sweet talk teach team tell terms test text than thank thanks that their them then there these they thing things think third those though
  thought three through time times tired today together told tomorrow tonight took totally touch town trade trailer truck trunk trust truth tune twice type
  under until upon useful using usual usually very view visit voice wait walk want wanted warn warning waste watch weather week weird well went were west what
  whatever when where whether while whole whose will wish woman wonder word words work works world worry worse worst worth would wrong year years yesterday young
  your yours list lists drive drove event events novice class cone cones stock street dry wet`.split(/\s+/),
);
