/** All generated pages, by path from the top of the checkout. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { settingsTable } from '../settings.js';
import { catalogPage } from './catalogPage.js';
import { commandsPage } from './commandsPage.js';
import { between, table } from './markdown.js';
import { talk } from './talk.js';

export const chartPath = 'bot/docs/chart.png';

const settingsRows = (): string =>
  table(
    ['setting', 'in the environment', 'what it is', 'when not set'],
    settingsTable.map(({ name, environment, about, standard }) => [`\`${name}\``, `\`${environment}\``, about, standard]),
  );
const fenced = (text: string): string => `\`\`\`text\n${text}\n\`\`\``;

/** @param top folder of the checkout, whose README is read for the parts that are not generated */
export async function pages(top: string): Promise<ReadonlyMap<string, string | Buffer>> {
  const { transcript, chart, chartLine, chartWords, conversion } = await talk();
  const picture = `\`${chartLine}\` gives this picture, with its values in words:\n\n![${chartLine}](${chartPath})\n\n${fenced(chartWords)}`;
  let readme = readFileSync(join(top, 'README.md'), 'utf8');
  readme = between(readme, 'transcript', `${fenced(transcript)}\n\n${picture}`);
  readme = between(readme, 'settings', settingsRows());
  return new Map<string, string | Buffer>([
    ['README.md', readme],
    ['core/REFERENCE.md', catalogPage()],
    ['commands/REFERENCE.md', commandsPage()],
    [
      'bot/docs/CONVERSION.md',
      `# A rear axle from another car, before and after\n\nGenerated from the invented club by \`npm run docs\`; a test fails when it is stale. Each answer is the first page that a phone shows.\n\n${conversion}\n`,
    ],
    [chartPath, chart],
  ]);
}
