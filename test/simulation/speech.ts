/** The real commands and the real renderer, for a simulated bot; pictures are a few bytes that stand for one. */
import { createRenderer } from '../../bot/render/renderer.js';
import type { Dispatch } from '../../bot/work/world.js';
import { dispatch } from '../../commands/dispatch.js';
import { type BotOptions, quiet } from './bot.js';

const calculator = { calculate: async () => ({ refused: 'There is no calculator here.' }) };
const realDispatch: Dispatch = (text, situation) => dispatch(text, { ...situation, calculator });
export const realSpeech: NonNullable<BotOptions['services']> = {
  dispatch: realDispatch,
  render: createRenderer(
    { draw: async ({ words }) => ({ png: Buffer.from(`picture: ${words}`), width: 1080, height: 810, words }) },
    quiet,
  ),
};
