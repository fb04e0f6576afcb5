/** commands/REFERENCE.md: every command, from the registry. */
import type { Command } from '../../commands/command.js';
import { commands } from '../../commands/registry.js';
import { table } from './markdown.js';

const groups: readonly (readonly [Command['group'], string, string])[] = [
  ['verb', 'Over everything that a car has', 'They work on every input and figure of `core/REFERENCE.md`.'],
  ['topic', 'Subjects', 'They need no saved car, and fill what the line does not say from the saved one.'],
  ['house', 'Cars, members and rooms', 'They look after what is kept, and who sees it.'],
];
function section(command: Command): string {
  const also = command.also.length === 0 ? '' : `\n\nAlso read: ${command.also.join(', ')}.`;
  const examples = table(
    ['line', 'what it does'],
    command.examples.map(({ line, does }) => [`\`${line}\``, does]),
  );
  return `### ${command.word}\n${command.summary}${command.changes ? ' Changes something; `undo` or its own counterpart takes it back.' : ''}${also}\n\n${examples}`;
}
export const commandsPage = (): string => `# Every command

Generated from the registry by \`npm run docs\`; a test fails when it is stale. No brackets or dashes are ever needed: words in any sensible order.

${groups
  .map(
    ([group, title, about]) =>
      `## ${title}\n${about}\n\n${commands
        .filter((c) => c.group === group)
        .map(section)
        .join('\n\n')}`,
  )
  .join('\n\n')}
`;
