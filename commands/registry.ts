/** All commands, in the order in which help lists them. */

import { advise, pairs } from './advice/advise.js';
import { judge } from './advice/judge.js';
import type { Command } from './command.js';
import { teachers } from './help.js';
import { calc } from './house/calc.js';
import { car, copyCar, newCar, renameCar } from './house/cars.js';
import { eraseCar, forget } from './house/forget.js';
import { hello, neverMind, thanks, yes } from './house/manners.js';
import { eraseMe, exportMe, forgetMe, me, units } from './house/me.js';
import { more } from './house/more.js';
import { leave, leaveNow, prefix } from './house/room.js';
import { share, unshare } from './house/share.js';
import { box, boxAdd, boxEmpty, boxEmptyNow, boxForget } from './parts/box.js';
import { bar } from './topics/bar.js';
import { corner } from './topics/corner.js';
import { gear } from './topics/gear.js';
import { pressure } from './topics/pressure.js';
import { ride } from './topics/ride.js';
import { spring } from './topics/spring.js';
import { tire } from './topics/tire.js';
import { wheel } from './topics/wheel.js';
import { compare } from './verbs/compare.js';
import { doubt } from './verbs/doubt.js';
import { draw } from './verbs/draw.js';
import { find } from './verbs/find.js';
import { fitGrip } from './verbs/fitGrip.js';
import { history } from './verbs/history.js';
import { back, keep } from './verbs/keep.js';
import { save } from './verbs/save.js';
import { set } from './verbs/set.js';
import { show } from './verbs/show.js';
import { split } from './verbs/split.js';
import { tryOut } from './verbs/try.js';
import { undo } from './verbs/undo.js';
import { why } from './verbs/why.js';

const verbs: readonly Command[] = [
  show,
  set,
  save,
  tryOut,
  find,
  fitGrip,
  compare,
  split,
  why,
  draw,
  doubt,
  advise,
  pairs,
  judge,
  keep,
  back,
  undo,
  history,
];
const topics: readonly Command[] = [tire, wheel, gear, spring, ride, bar, corner, pressure];
const house: readonly Command[] = [
  car,
  newCar,
  copyCar,
  renameCar,
  forget,
  eraseCar,
  share,
  unshare,
  box,
  boxAdd,
  boxForget,
  boxEmpty,
  boxEmptyNow,
  units,
  me,
  exportMe,
  forgetMe,
  eraseMe,
  calc,
  more,
  prefix,
  leave,
  leaveNow,
  hello,
  thanks,
  neverMind,
  yes,
];
const taught = teachers(() => commands);
export const commands: readonly Command[] = [...verbs, ...topics, ...house, ...taught];

const byWord = new Map(commands.map((command) => [command.word, command]));
export const commandOf = (word: string): Command | undefined => byWord.get(word);

const longestSummary = 110;
/** What is wrong with the commands as they are written; asked at start, when nothing may be. */
export function registryProblems(all: readonly Command[] = commands): readonly string[] {
  const problems: string[] = [];
  const meant = new Map<string, string>();
  for (const { word, also, summary, examples } of all) {
    for (const spelling of [word, ...also]) {
      const other = meant.get(spelling);
      if (other !== undefined) problems.push(`"${spelling}" means ${other} and ${word}`);
      meant.set(spelling, word);
      if (spelling !== spelling.toLowerCase().trim() || spelling === '') problems.push(`"${spelling}" of ${word} is not plain lower case`);
    }
    if (summary === '' || summary.length > longestSummary) problems.push(`the summary of ${word} has ${summary.length} characters`);
    if (examples.length === 0) problems.push(`${word} has no example`);
    for (const { line, does } of examples) if (line.trim() === '' || does.trim() === '') problems.push(`an example of ${word} is empty`);
  }
  return problems;
}
