/** What the reader is told of the world: names and words, no values. */
import { catalog } from '../core/stubaxle.js';
import type { Context } from './context.js';
import type { Setting } from './language/setting.js';

export function settingOf(context: Context, commands: Setting['commands'], others: Setting['others'] = context.garage.others): Setting {
  const { garage, asker } = context;
  const chosen = garage.chosen;
  return {
    catalog,
    commands,
    preferences: asker.preferences,
    cars: garage.mine.map(({ id, name }) => ({ id, name })),
    chosen: chosen?.id,
    setups: chosen ? garage.setups(chosen.id).map(({ name }) => name) : [],
    // As they are: only of what is used is it noted that it was seen.
    others,
    members: garage.members,
  };
}
