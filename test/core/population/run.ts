/** `npm run coverage -- CARS [LAYOUT]`: how often each figure holds, for many cars. */
import { coverage } from './coverage.js';
import { layouts } from './layouts.js';

const [cars = '4000', only] = process.argv.slice(2);
for (const layout of layouts) {
  if (only !== undefined && !layout.name.includes(only)) continue;
  const all = coverage(layout, Number(cars), () => true);
  const off = all.filter(({ held, cars: n }) => n > Number(cars) / 20 && (held < 0.93 || held > 0.99));
  console.log(`\n${layout.name}: ${all.length} figures, ${off.length} outside 93 to 99 in 100`);
  for (const { figure, cars: n, held, width, off: error } of [...off].sort((a, b) => a.held - b.held))
    console.log(
      `  ${(100 * held).toFixed(1).padStart(5)}  ${figure.padEnd(30)} ${String(n).padStart(5)} cars  ± ${width.toPrecision(3)}, off ${error.toPrecision(3)}`,
    );
}
