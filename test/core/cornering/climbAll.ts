/** `npm run climbs -- CARS STEP`: lift-offs and rollover of many random cars against a climb by small steps; without numbers 340 cars, 0.01 g. */
import { climbed } from './climbs.js';

const [cars = '340', stride = '0.01'] = process.argv.slice(2);
let [off, falls] = [0, 0];
for (let seed = 0; seed < Number(cars); seed++) {
  const one = climbed(seed, Number(stride));
  if (one.falls) falls++;
  if (one.otherwise.length > 0) off++;
  for (const words of one.otherwise) console.log(`car ${seed}: ${words}`);
}
console.log(`${cars} cars, ${falls} that go over with an inner wheel on the ground, ${off} otherwise than climbed`);
