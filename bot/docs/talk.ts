/** The README's talk: real lines of two members of the invented club, with the answers that the console gives today. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { enter, Session } from '../console/session.js';
import { consoleWorld } from '../console/world.js';
import { demoMembers, seedDemo } from '../demo.js';
import { createLog } from '../log.js';
import { createServices } from '../services.js';
import { openDatabase } from '../store/database.js';
import { Work } from '../work.js';

/** What is said, by whom; none of it changes with the day on which it is said. */
const lines: readonly { readonly as: (typeof demoMembers)[number]; readonly line: string }[] = [
  { as: 'robin', line: 'rear ride frequency?' },
  { as: 'robin', line: 'try rear spring 650 and 0.25" spacer rear' },
  { as: 'robin', line: 'what front spring for 2.0 Hz' },
  { as: 'sam', line: 'will 205/50R15 on 15x7 et25 fit instead of 195/50R15 on 15x6.5 et40' },
  { as: 'sam', line: 'how fast in 2nd at 6500' },
  { as: 'robin', line: 'compare dry with wet' },
];
const drawn = { as: 'robin', line: 'draw front ride frequency against front spring 250 to 600' } as const;

export interface Talk {
  readonly transcript: string;
  readonly chartLine: string;
  readonly chartWords: string;
  readonly chart: Buffer;
}
/** Seeds the club in a folder of its own, says the lines, and throws the folder away. */
export async function talk(): Promise<Talk> {
  const folder = mkdtempSync(join(tmpdir(), 'stubaxle-docs-'));
  const log = createLog({ level: 'error' });
  const services = createServices(log);
  const store = openDatabase(join(folder, 'docs.db'));
  try {
    const world = consoleWorld(store, services, log, '!');
    const work = new Work(world);
    await seedDemo(world, work, (member) => enter(world, member));
    const session = new Session(world, work, folder, demoMembers[0]);
    const said: string[] = [];
    for (const { as, line } of lines) {
      await session.say(`as ${as}`);
      const { text } = await session.say(line);
      said.push(`${as}> ${line}\n${text}`);
    }
    await session.say(`as ${drawn.as}`);
    const chart = await session.say(drawn.line);
    const [file] = chart.files;
    if (file === undefined) throw new Error(`no chart came of: ${drawn.line}`);
    return { transcript: said.join('\n\n'), chartLine: drawn.line, chartWords: chart.text, chart: readFileSync(file) };
  } finally {
    store.close();
    await services.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
