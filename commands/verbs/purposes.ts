/** What each kind of part is for: the figures that a member who changes it looks at first. By the beginning of the input's path, the longest that fits. */
import type { Entry } from '../../core/catalog.js';
import { pathAt, placesOf } from '../../core/engine.js';
import { catalog } from '../looked.js';

export interface Purpose {
  /** Beginning of the paths of inputs. */
  readonly part: string;
  /** Paths of entries, the most telling first. */
  readonly tells: readonly string[];
}
/** Common practice, no source: what the trade looks at. */
export const purposes: readonly Purpose[] = [
  { part: 'spring.', tells: ['rideFrequency', 'heightChange', 'balance', 'roll.angle'] },
  { part: 'cornerSpring', tells: ['rideFrequency', 'heightChange', 'balance'] },
  { part: 'inner.', tells: ['rideFrequency', 'heightChange', 'balance'] },
  { part: 'helper.', tells: ['rideFrequency', 'heightChange', 'balance'] },
  { part: 'coil.', tells: ['coil.rate', 'rideFrequency', 'balance'] },
  { part: 'spring.length', tells: ['heightChange', 'cross'] },
  { part: 'spring.drop', tells: ['heightChange'] },
  { part: 'spacer', tells: ['heightChange', 'cross', 'preload.cross'] },
  { part: 'perch.', tells: ['heightChange', 'cross', 'preload.cross'] },
  { part: 'isolator', tells: ['heightChange', 'rideFrequency'] },
  { part: 'perchIsolator', tells: ['heightChange', 'rideFrequency'] },
  { part: 'bar.', tells: ['bar.rateAtEnds', 'balance', 'roll.angle'] },
  { part: 'roll.bar', tells: ['balance', 'roll.angle', 'roll.frontShare'] },
  { part: 'tire.', tells: ['tire.freeDiameter', 'topSpeed', 'balance'] },
  { part: 'tire.size', tells: ['tire.freeDiameter', 'topSpeed', 'tire.outerEdge', 'tire.innerEdge', 'speedometer.ratio'] },
  { part: 'tire.pressure', tells: ['balance', 'tire.rate', 'rideFrequency', 'roll.angle'] },
  { part: 'tire.rate', tells: ['rideFrequency', 'balance', 'roll.angle'] },
  { part: 'wheel.', tells: ['track', 'tire.outerEdge', 'tire.innerEdge', 'balance'] },
  { part: 'track', tells: ['balance', 'roll.angle', 'loadTransfer.frontShare'] },
  { part: 'camber', tells: ['balance', 'limit'] },
  { part: 'grip.', tells: ['limit.car', 'balance'] },
  { part: 'mass', tells: ['limit.car', 'rideFrequency', 'balance'] },
  { part: 'frontShare', tells: ['balance', 'rideFrequency'] },
  { part: 'driver', tells: ['totalMass', 'frontShareNow', 'cross', 'balance'] },
  { part: 'passenger', tells: ['totalMass', 'frontShareNow', 'cross', 'balance'] },
  { part: 'ballast', tells: ['totalMass', 'frontShareNow', 'cross', 'balance'] },
  { part: 'fuel', tells: ['totalMass', 'frontShareNow', 'balance'] },
  { part: 'cg.', tells: ['roll.angle', 'loadTransfer', 'balance'] },
  { part: 'unsprung', tells: ['rideFrequency', 'balance'] },
  { part: 'rollCenter', tells: ['balance', 'roll.angle'] },
  { part: 'axle.', tells: ['balance', 'roll.angle'] },
  { part: 'suspension', tells: ['balance', 'roll.angle'] },
  { part: 'chassis', tells: ['balance', 'roll.angle'] },
  { part: 'final', tells: ['topSpeed', 'peakThrust'] },
  { part: 'gear.', tells: ['topSpeed', 'peakThrust', 'shiftTo'] },
  { part: 'transfer', tells: ['topSpeed', 'peakThrust'] },
  { part: 'redline', tells: ['topSpeed'] },
  { part: 'engine.', tells: ['engine.greatestPower', 'peakThrust', 'powerToWeight'] },
  { part: 'brake.', tells: ['brake.order', 'brake.share', 'brake.limit'] },
  { part: 'damper.', tells: ['dampingRatio'] },
  { part: 'differential', tells: ['traction.cornerAcceleration'] },
  { part: 'links.', tells: ['links.antiDive', 'links.antiSquat'] },
];

/** The figures that a part is for; none where nothing is listed. */
export function purposeOf({ path }: Pick<Entry, 'path'>): readonly string[] {
  const fits = purposes.filter(({ part }) => path.startsWith(part));
  return fits.sort((a, b) => b.part.length - a.part.length)[0]?.tells ?? [];
}
const endOf: Readonly<Record<string, string>> = { lf: 'front', rf: 'front', lr: 'rear', rr: 'rear', front: 'front', rear: 'rear' };
const byPath = new Map(catalog.entries.map((entry) => [entry.path, entry]));
/** The same as full paths: of an end where the input is told at one, of all places else. */
export function purposePaths(entry: Entry, places: readonly string[]): readonly string[] {
  const ends = new Set(places.flatMap((place) => endOf[place] ?? []));
  return purposeOf(entry).flatMap((path) => {
    const figure = byPath.get(path);
    if (figure === undefined) throw new Error(`${path} is no entry`);
    const all = placesOf(figure.scope);
    // Of the gears the second: what a club's course is driven in.
    if (figure.scope === 'gear') return ['2', ...all.filter((place) => place !== '2')].map((place) => pathAt(place, figure));
    const here = figure.scope === 'axle' ? all.filter((place) => ends.size === 0 || ends.has(place)) : all;
    return here.map((place) => pathAt(place, figure));
  });
}
