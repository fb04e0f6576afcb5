/** All entries of the catalogs: one line a subject, in the order in which subjects are shown. */
import { type Entry, isEntry } from './catalog.js';
import * as aboardFigures from './figures/aboard.js';
import * as balanceFigures from './figures/balance.js';
import * as barFigures from './figures/bars.js';
import * as brakeFigures from './figures/brakes.js';
import * as brakingFigures from './figures/braking.js';
import * as circleFigures from './figures/circles.js';
import * as coilFigures from './figures/coil.js';
import * as coilStressFigures from './figures/coilStress.js';
import * as corneringFigures from './figures/cornering.js';
import * as cornerLawFigures from './figures/cornerLaws.js';
import * as dampingFigures from './figures/damping.js';
import * as engineFigures from './figures/engine.js';
import * as gearingFigures from './figures/gearing.js';
import * as heightFigures from './figures/heights.js';
import * as leaningFigures from './figures/leaning.js';
import * as linkFigures from './figures/links.js';
import * as loadFigures from './figures/loads.js';
import * as massFigures from './figures/mass.js';
import * as preloadFigures from './figures/preload.js';
import * as pressureFigures from './figures/pressure.js';
import * as cornerRideFigures from './figures/ride.js';
import * as rideTravelFigures from './figures/rideTravel.js';
import * as rollFigures from './figures/roll.js';
import * as rollAxisFigures from './figures/rollAxis.js';
import * as spinFigures from './figures/spin.js';
import * as springLeverFigures from './figures/springLever.js';
import * as springsFigures from './figures/springs.js';
import * as standingFigures from './figures/standing.js';
import * as tiltFigures from './figures/tilt.js';
import * as tireLoadFigures from './figures/tireLoads.js';
import * as tireFigures from './figures/tires.js';
import * as tiresUnderLoadFigures from './figures/tiresUnderLoad.js';
import * as trackFigures from './figures/track.js';
import * as tractionFigures from './figures/traction.js';
import * as transferFigures from './figures/transfer.js';
import * as travelFigures from './figures/travel.js';
import * as turningFigures from './figures/turning.js';
import * as unsaidFigures from './figures/unsaid.js';
import * as wheelRateFigures from './figures/wheelRates.js';
import * as wheelFigures from './figures/wheels.js';
import * as alignmentInputs from './inputs/alignment.js';
import * as axleInputs from './inputs/axles.js';
import * as barInputs from './inputs/bars.js';
import * as brakeInputs from './inputs/brakes.js';
import * as coilInputs from './inputs/coil.js';
import * as drivelineInputs from './inputs/driveline.js';
import * as engineInputs from './inputs/engine.js';
import * as gearingInputs from './inputs/gearing.js';
import * as gripInputs from './inputs/grip.js';
import * as layoutInputs from './inputs/layout.js';
import * as linkInputs from './inputs/links.js';
import * as massInputs from './inputs/mass.js';
import * as pressureInputs from './inputs/pressure.js';
import * as rideInputs from './inputs/ride.js';
import * as springsInputs from './inputs/springs.js';
import * as tireInputs from './inputs/tires.js';
import * as turningInputs from './inputs/turning.js';
import * as wheelInputs from './inputs/wheels.js';

type Subject = Readonly<Record<string, unknown>>;
const subjects: readonly Subject[] = [
  layoutInputs,
  massInputs,
  springsInputs,
  coilInputs,
  rideInputs,
  alignmentInputs,
  tireInputs,
  wheelInputs,
  gearingInputs,
  pressureInputs,
  axleInputs,
  barInputs,
  gripInputs,
  turningInputs,
  drivelineInputs,
  engineInputs,
  brakeInputs,
  linkInputs,
  tireFigures,
  wheelFigures,
  trackFigures,
  tireLoadFigures,
  tiresUnderLoadFigures,
  gearingFigures,
  pressureFigures,
  unsaidFigures,
  massFigures,
  coilFigures,
  springsFigures,
  coilStressFigures,
  wheelRateFigures,
  rideTravelFigures,
  dampingFigures,
  travelFigures,
  tiltFigures,
  standingFigures,
  heightFigures,
  loadFigures,
  aboardFigures,
  cornerRideFigures,
  barFigures,
  springLeverFigures,
  rollFigures,
  cornerLawFigures,
  corneringFigures,
  balanceFigures,
  rollAxisFigures,
  leaningFigures,
  transferFigures,
  turningFigures,
  preloadFigures,
  circleFigures,
  engineFigures,
  tractionFigures,
  spinFigures,
  brakeFigures,
  brakingFigures,
  linkFigures,
];

/**
 * The entries that the subjects export, subject by subject, each in the order of its file; one that a second file passes on counts once.
 * Throws when two entries have one path.
 */
export function entriesOf(given: readonly Subject[]): readonly Entry[] {
  const found = given.flatMap((subject) =>
    [...new Set(Object.values(subject).filter(isEntry))].filter((entry) => entry.kind !== 'place').sort((a, b) => a.order - b.order),
  );
  const byPath = new Map<string, Entry>();
  for (const entry of found) {
    const other = byPath.get(entry.path);
    if (other && other !== entry) throw new Error(`two entries are called ${entry.path}`);
    byPath.set(entry.path, entry);
  }
  return [...byPath.values()];
}

export const entries = entriesOf(subjects);
