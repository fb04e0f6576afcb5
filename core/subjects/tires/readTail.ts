/** Reads what follows the dimensions of a tire size: load index, speed symbol, suffixes. */
import { isRefusal, type Refusal, refuse } from '../../catalog.js';
import { highestLoadIndex } from './loadIndex.js';
import type { Service } from './size.js';
import { isSpeedSymbol } from './speedSymbol.js';

export interface Tail {
  readonly service: Service;
  readonly suffixes: readonly string[];
  /** LT behind the rim code. */
  readonly lightTruck: boolean;
}
interface Piece {
  readonly suffix?: string;
  readonly lightTruck?: true;
  readonly service?: Service;
}
function noSymbol(letter: string, whole: string): Refusal {
  if (letter === 'Z')
    return refuse(`${whole}: Z stands inside the size, as in 245/40ZR17; the symbol behind the load index is then W or Y.`);
  return refuse(`${whole}: there is no speed symbol ${letter}; the usual ones are Q, R, S, T, U, H, V, W and Y.`);
}
function serviceOf(groups: Readonly<Record<string, string | undefined>>, whole: string): Piece | Refusal {
  const loadIndex = Number(groups.load);
  const twinLoadIndex = groups.twin === undefined ? undefined : Number(groups.twin);
  const speed = groups.speed;
  if (Math.max(loadIndex, twinLoadIndex ?? 0) > highestLoadIndex) return refuse(`${whole}: load indices end at ${highestLoadIndex}.`);
  if (speed !== undefined && !isSpeedSymbol(speed)) return noSymbol(speed, whole);
  return {
    service: {
      loadIndex,
      ...(twinLoadIndex === undefined ? {} : { twinLoadIndex }),
      ...(speed === undefined ? {} : { speed }),
      ...(groups.bracket === undefined ? {} : { faster: true }),
    },
  };
}
function symbolAlone(letter: string, whole: string): Piece | Refusal {
  return isSpeedSymbol(letter) ? { service: { speed: letter, faster: true } } : noSymbol(letter, whole);
}
const end = '(?![A-Z0-9/])';
/** Tried in order on what is left. */
const pieces: readonly [RegExp, (match: RegExpExecArray, whole: string) => Piece | Refusal][] = [
  [new RegExp(`^(\\d{1,2}) ?(?:PR|PLY)${end}`), (match) => ({ suffix: `${match[1]}PR` })],
  [new RegExp(`^(?:LR|LOAD RANGE) ?([A-N])${end}`), (match) => ({ suffix: `LR${match[1]}` })],
  [new RegExp(`^LT${end}`), () => ({ lightTruck: true })],
  [new RegExp(`^(?:REINF(?:ORCED)?|EXTRA LOAD)${end}`), () => ({ suffix: 'XL' })],
  [new RegExp(`^M ?[+&/] ?S${end}`), () => ({ suffix: 'M+S' })],
  [new RegExp(`^(?:XL|EL|HL|SL|RF|CP|C|TL|TT)${end}`), (match) => ({ suffix: match[0] })],
  [/^\(([A-Z])\)/, (match, whole) => symbolAlone(match[1] ?? '', whole)],
  [
    new RegExp(`^(?<bracket>\\()?(?<load>\\d{2,3})(?:/(?<twin>\\d{2,3}))?\\s?(?<speed>A[1-8]|[A-Z])?\\)?${end}`),
    (match, whole) => serviceOf(match.groups ?? {}, whole),
  ],
];

/** `rest` in capitals; `whole` is what was typed, for the refusal. Order of what follows is free, nothing may be left over or said twice. */
export function readTail(rest: string, whole: string): Tail | Refusal {
  let service: Service = {};
  const suffixes = new Set<string>();
  let lightTruck = false;
  let left = rest.trim();
  while (left !== '') {
    const [piece, length] = nextPiece(left, whole);
    if (isRefusal(piece)) return piece;
    if (piece.service && (service.loadIndex ?? service.speed) !== undefined) return leftOver(left, whole);
    service = piece.service ?? service;
    lightTruck ||= piece.lightTruck ?? false;
    if (piece.suffix !== undefined) suffixes.add(piece.suffix);
    left = left.slice(length).trim();
  }
  return { service, suffixes: [...suffixes], lightTruck };
}
function nextPiece(left: string, whole: string): readonly [Piece | Refusal, number] {
  for (const [form, make] of pieces) {
    const match = form.exec(left);
    if (match) return [make(match, whole), match[0].length];
  }
  return [leftOver(left, whole), 0];
}
const leftOver = (left: string, whole: string): Refusal =>
  refuse(`${whole}: I can't read "${left}" behind the tire size; a load index and speed symbol look like 91W.`);
