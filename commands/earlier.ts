/** What an earlier answer left, as the lines of a message see it; and whether they gave any of it again. */
import type { Conversation, Sight } from './context.js';

export class Earlier {
  readonly #left: Conversation;
  #used = false;
  constructor(left: Conversation) {
    this.#left = left;
  }
  /** Clubmates' cars that are told of again. */
  get seen(): readonly Sight[] {
    return this.#used ? (this.#left.seen ?? []) : [];
  }
  /** `trial`: the last one, as the message's own lines have left it. */
  as(trial: Conversation['trial']): Conversation {
    const left = this.#left;
    const use = (): void => {
      this.#used = true;
    };
    return {
      get rest() {
        use();
        return left.rest;
      },
      get choices() {
        use();
        return left.choices;
      },
      get trial() {
        if (trial !== undefined && trial === left.trial) use();
        return trial;
      },
      ...(left.closed ? { closed: left.closed } : {}),
    };
  }
}
