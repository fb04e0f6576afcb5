/** The members of the canaries' club, and the numbers by which what each of them keeps is known wherever it turns up. */
export interface Owner {
  readonly id: string;
  readonly name: string;
  readonly chat: string;
  readonly car: string;
  /** What plants the car's canaries, after its name. */
  readonly facts: string;
  /** A part that nobody else ever sees. */
  readonly part: string;
  /** The numbers of the car in lb/in, N/mm and N/m, lb and kg; and of the part. */
  readonly canary: RegExp;
  readonly secret: RegExp;
}
/** 1 lb/in = 175.126835 N/m, 1 lb = 0.45359237 kg (NIST SP 811, appendix B.8). */
const [perLbIn, perLb] = [175.126835, 0.45359237];
/** `1,185.31`, also without the comma, with as many digits as there are; or rounded, where its unit is beside it. */
function form(value: number, unit: string): string {
  const grouped = (text: string): string => text.replace(/^(\d+)(\d{3})(?!\d)/, '$1[, ]?$2').replace('.', '\\.');
  const cutOff = Number.isInteger(Math.round(value * 1e6) / 1e5) ? value.toFixed(1) : (Math.floor(value * 100) / 100).toFixed(2);
  return `(?:${grouped(cutOff)}|${grouped(value.toFixed(2))})\\d*|(?:${grouped(value.toFixed(1))}|${grouped(value.toFixed(0))}) ?${unit}(?!\\w)`;
}
const known = (forms: readonly string[]): RegExp => new RegExp(`(?<![\\d.,])(?:${forms.join('|')})(?!\\d)`);
const springForms = (spring: number): readonly string[] => [
  form(spring, 'lb/in'),
  form((spring * perLbIn) / 1000, 'N/mm'),
  `${Math.floor(spring * perLbIn)}(?:\\.\\d*)?`,
];

function owner(name: string, car: string, spring: number, weight: number): Owner {
  const [exactSpring, exactWeight] = [spring + 0.2, weight + 0.2];
  return {
    ...{ id: `@${name}:lane.test`, name, chat: `!${name}-and-bot:lane.test`, car, part: `${spring + 5}.2` },
    facts: `${exactWeight} lb ± 0.01, 52.5% front, wheelbase 99 in, front spring ${exactSpring} lb/in ± 0.01, rear spring 281 lb/in, front motion ratio 0.71, rear motion ratio 0.65`,
    canary: known([...springForms(exactSpring), form(exactWeight, 'lb'), form(exactWeight * perLb, 'kg')]),
    secret: known(springForms(spring + 5.2)),
  };
}
export const owners = [owner('robin', 'quince', 437, 2613), owner('sam', 'medlar', 463, 2467), owner('alex', 'sorrel', 491, 2731)] as const;
/** Where they all are at first. */
export const clubRooms = ['!paddock:lane.test', '!grid:lane.test'] as const;
