/** The catalog of Stubaxle, compiled once when it is first imported. */
import { compile } from './engine.js';
import { entries } from './entries.js';

export const catalog = compile(entries);
