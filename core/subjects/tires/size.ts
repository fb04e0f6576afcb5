/** A tire size as it is marked: what its numbers and letters say, and the one way to write it. */
import type { SpeedSymbol } from './speedSymbol.js';

/** Load index and speed symbol, as far as they were given. */
export interface Service {
  readonly loadIndex?: number;
  /** For twin tires. */
  readonly twinLoadIndex?: number;
  readonly speed?: SpeedSymbol;
  /** In brackets: made for more than the symbol's speed, by how much only the maker knows. */
  readonly faster?: true;
}
interface Marked {
  /** Without service description and suffixes: `245/40R17`. */
  readonly label: string;
  /** As marked: inches, or millimetres for the rims that are measured so. */
  readonly rimCode: number;
  /** Nominal rim diameter, m: exactly the code in inches (or millimetres). Design diameters use it rounded to a millimetre. */
  readonly rimDiameter: number;
  readonly construction: 'radial' | 'diagonal' | 'belted';
  /** Speed letter inside the size: `245/40ZR17`, `185/70SR14`. Z stands for above 240 km/h. */
  readonly sizeSpeed?: SpeedSymbol | 'Z';
  readonly service: Service;
  /** XL, C, 8PR and their like, in the order of writing. */
  readonly suffixes: readonly string[];
}
/** P: the American passenger series. LT: light truck. T: temporary spare. ST: trailer. */
export type Series = 'P' | 'LT' | 'T' | 'ST';

/** `245/40R17`: section width in millimetres, aspect ratio in per cent, rim. */
export interface MetricSize extends Marked {
  readonly form: 'metric';
  readonly series?: Series;
  readonly width_mm: number;
  /** Per cent. */
  readonly aspect: number;
}
/** `165R13`, `6.40-13`: no ratio; dimensions only from a table. */
export interface OlderSize extends Marked {
  readonly form: 'older';
  /** Nominal, m. */
  readonly width: number;
}
/** `31x10.50R15LT`: a nominal diameter and section width in inches, both of them labels. */
export interface FlotationSize extends Marked {
  readonly form: 'flotation';
  readonly lightTruck: boolean;
  readonly diameter_in: number;
  readonly width_in: number;
}
/** `23.0x8.0-13` in inches, `245/620R17` in millimetres: the maker's diameter and width, which may be of tread or section. */
export interface RaceSize extends Marked {
  readonly form: 'race';
  /** m. */
  readonly diameter: number;
  /** m. */
  readonly width: number;
}
export type TireSize = MetricSize | OlderSize | FlotationSize | RaceSize;

/** The load index and speed symbol as they stand on a sidewall: `91W`, `(91Y)`, `107/105T`. */
function writeService({ loadIndex, twinLoadIndex, speed, faster }: Service): string {
  const load = loadIndex === undefined ? '' : `${loadIndex}${twinLoadIndex === undefined ? '' : `/${twinLoadIndex}`}`;
  const text = `${load}${speed ?? ''}`;
  return faster && text !== '' ? `(${text})` : text;
}
/** Suffixes that are written against the rim code. */
const close: ReadonlySet<string> = new Set(['C', 'CP']);

/** The one way to write a size; `readTireSize` reads it back to the same. */
export function writeTireSize(size: TireSize): string {
  const tight = size.suffixes.filter((suffix) => close.has(suffix)).join('');
  const loose = size.suffixes.filter((suffix) => !close.has(suffix));
  return [size.label + tight, writeService(size.service), ...loose].filter((part) => part !== '').join(' ');
}
