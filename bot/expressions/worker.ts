/** The thread that works sums out. */
import { parentPort } from 'node:worker_threads';
import { sumSchema } from './question.js';
import { work } from './work.js';

const port = parentPort;
if (port === null) throw new Error('this file runs as a thread');
port.on('message', (message: unknown) => port.postMessage(work(sumSchema.parse(message))));
port.postMessage('ready');
