/** What the reader knows of the world when it reads a line: names and words, no values. */
import type { Entry } from '../../core/catalog.js';
import type { Command } from '../command.js';
import type { Preferences } from '../context.js';

export interface Setting {
  /** The compiled catalog; `dependsOn` takes full paths (`front.rideFrequency`, `front.spring.rate`). The vocabulary is made once for each such object. */
  readonly catalog: {
    readonly entries: readonly Entry[];
    dependsOn(figure: string, input: string): boolean;
  };
  /** The vocabulary of verbs is made once for each such array: keep the array. */
  readonly commands: readonly Pick<Command, 'word' | 'also' | 'takes' | 'changes' | 'group' | 'hears' | 'verbatim'>[];
  readonly preferences: Preferences;
  /** The asker's cars. */
  readonly cars: readonly { readonly id: number; readonly name: string }[];
  /** Id of the asker's car in use. */
  readonly chosen: number | undefined;
  /** Named setups of the car in use. */
  readonly setups: readonly string[];
  /** Clubmates' cars that can be seen here. */
  readonly others: readonly { readonly id: number; readonly name: string; readonly owner: string; readonly ownerName: string }[];
  /** Members of this room. */
  readonly members: readonly { readonly id: string; readonly name: string }[];
}
