/** All entries of the catalogs: one line a subject, in the order in which subjects are shown. */
import { type Entry, isEntry } from './catalog.js';
import * as alignmentInputs from './subjects/alignment/told.js';
import * as preloadFigures from './subjects/bars/preload.js';
import * as barFigures from './subjects/bars/stiffness.js';
import * as barInputs from './subjects/bars/told.js';
import * as brakeFigures from './subjects/braking/brakes.js';
import * as brakingFigures from './subjects/braking/locking.js';
import * as brakeInputs from './subjects/braking/told.js';
import * as turningInputs from './subjects/cornering/asked.js';
import * as balanceFigures from './subjects/cornering/balance.js';
import * as corneringFigures from './subjects/cornering/car.js';
import * as circleFigures from './subjects/cornering/circles.js';
import * as cornerLawFigures from './subjects/cornering/cornerLaws.js';
import * as transferFigures from './subjects/cornering/transfer.js';
import * as turningFigures from './subjects/cornering/turning.js';
import * as dampingFigures from './subjects/damping/damping.js';
import * as engineFigures from './subjects/engine/power.js';
import * as engineInputs from './subjects/engine/told.js';
import * as gearingFigures from './subjects/gearing/speeds.js';
import * as gearingInputs from './subjects/gearing/told.js';
import * as gripInputs from './subjects/grip/told.js';
import * as layoutInputs from './subjects/layout/told.js';
import * as aboardFigures from './subjects/mass/aboard.js';
import * as loadFigures from './subjects/mass/loads.js';
import * as tiltFigures from './subjects/mass/tilt.js';
import * as massInputs from './subjects/mass/told.js';
import * as unsaidFigures from './subjects/mass/unsaid.js';
import * as massFigures from './subjects/mass/weighed.js';
import * as cornerRideFigures from './subjects/ride/corner.js';
import * as heightFigures from './subjects/ride/heights.js';
import * as rideTravelFigures from './subjects/ride/rideTravel.js';
import * as standingFigures from './subjects/ride/standing.js';
import * as rideInputs from './subjects/ride/told.js';
import * as travelFigures from './subjects/ride/travel.js';
import * as leaningFigures from './subjects/roll/leaning.js';
import * as rollAxisFigures from './subjects/roll/rollAxis.js';
import * as rollFigures from './subjects/roll/stiffness.js';
import * as coilFigures from './subjects/springs/coilFigures.js';
import * as coilStressFigures from './subjects/springs/coilStress.js';
import * as coilInputs from './subjects/springs/coilTold.js';
import * as springsFigures from './subjects/springs/forces.js';
import * as springLeverFigures from './subjects/springs/springLever.js';
import * as springsInputs from './subjects/springs/told.js';
import * as wheelRateFigures from './subjects/springs/wheelRates.js';
import * as linkFigures from './subjects/suspension/links.js';
import * as linkInputs from './subjects/suspension/linksTold.js';
import * as axleInputs from './subjects/suspension/told.js';
import * as tireFigures from './subjects/tires/dimensions.js';
import * as pressureFigures from './subjects/tires/pressure.js';
import * as pressureInputs from './subjects/tires/pressureTold.js';
import * as tireLoadFigures from './subjects/tires/tireLoads.js';
import * as tiresUnderLoadFigures from './subjects/tires/tiresUnderLoad.js';
import * as tireInputs from './subjects/tires/told.js';
import * as spinFigures from './subjects/traction/spin.js';
import * as tractionFigures from './subjects/traction/thrust.js';
import * as drivelineInputs from './subjects/traction/told.js';
import * as wheelFigures from './subjects/wheels/fit.js';
import * as wheelInputs from './subjects/wheels/told.js';
import * as trackFigures from './subjects/wheels/track.js';

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
