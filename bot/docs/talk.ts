/** Talks for the docs: real lines of members of the invented club, with the answers that the console gives today. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { enter, Session } from '../console/session.js';
import { consoleWorld } from '../console/world.js';
import { demoMembers, seedDemo } from '../demo.js';
import { createLog } from '../log.js';
import { openDatabase } from '../records/database.js';
import { createServices } from '../services.js';
import { Work } from '../work.js';

interface Line {
  readonly as: (typeof demoMembers)[number];
  readonly line: string;
}
/** What is said, by whom; none of it changes with the day on which it is said. */
const lines: readonly Line[] = [
  { as: 'robin', line: 'rear ride frequency?' },
  { as: 'robin', line: 'try rear spring 650 and 0.25" spacer rear' },
  { as: 'robin', line: 'what front spring for 2.0 Hz' },
  { as: 'sam', line: 'will 205/50R15 on 15x7 et25 fit instead of 195/50R15 on 15x6.5 et40' },
  { as: 'sam', line: 'how fast in 2nd at 6500' },
  { as: 'robin', line: 'compare dry with wet' },
  { as: 'robin', line: 'which end lets go first' },
  { as: 'robin', line: 'more rotation mid corner' },
  { as: 'sam', line: 'what would mine need to have turnips front share of roll stiffness' },
];
const drawn = { as: 'robin', line: 'draw front ride frequency against front spring 250 to 600' } as const;

/** A chapter of the worked example: why, then what is said. */
interface Chapter {
  readonly why: string;
  readonly lines: readonly string[];
}
/** A car that is given another car's rear axle, before and after, told by its owner's lines. */
const conversion: readonly Chapter[] = [
  {
    why: 'Robin has been offered a beam axle for turnip, whose rear wheels are hung independently. First, where does the car stand?',
    lines: ['corner', 'show rear roll stiffness'],
  },
  {
    why: 'What would the axle do? Its springs stand closer together than the wheels, and its roll center lies higher. Nothing is saved yet.',
    lines: ['try rear axle beam, spring base 40 in, rear roll center 9 in, balance'],
  },
  {
    why: 'It is fitted. The setup of before is kept by name, so that every later answer can be held against it.',
    lines: ['keep as before', 'set rear axle beam, spring base 40 in, rear roll center 9 in', 'corner'],
  },
  {
    why: 'Which part of the conversion did it? The change is split over what differs, in no order.',
    lines: ['split balance between before and now'],
  },
  {
    why: 'What in the box brings the rotation back, for how much work? And what would it take all the way?',
    lines: ['more rotation mid corner', 'what rear spring for balance 0'],
  },
];

export interface Talk {
  readonly transcript: string;
  readonly chartLine: string;
  readonly chartWords: string;
  readonly chart: Buffer;
  /** The worked example, as Markdown. */
  readonly conversion: string;
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
    const chapters: string[] = [];
    for (const { why, lines: said } of conversion) {
      const answers: string[] = [];
      for (const line of said) answers.push(`robin> ${line}\n${(await session.say(line)).text}`);
      chapters.push(`${why}\n\n\`\`\`text\n${answers.join('\n\n')}\n\`\`\``);
    }
    const told = chapters.join('\n\n');
    return { transcript: said.join('\n\n'), chartLine: drawn.line, chartWords: chart.text, chart: readFileSync(file), conversion: told };
  } finally {
    store.close();
    await services.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
