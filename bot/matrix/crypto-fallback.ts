/** Whether the native crypto module that matrix-bot-sdk requires can be loaded here, and loading the SDK all the same when it cannot. */
import Module, { createRequire } from 'node:module';

const require = createRequire(import.meta.url);
const nativeCrypto = '@matrix-org/matrix-sdk-crypto-nodejs';
let known: { readonly missing: string | undefined } | undefined;

/**
 * Why the native crypto module cannot be used, in a sentence; undefined when it can. Asked before the SDK is imported: the SDK requires the
 * module as it loads, and throws without it. Unencrypted rooms need nothing of it, so where it is missing an empty module takes its place.
 */
export function fallBackWithoutCrypto(): string | undefined {
  known ??= { missing: load() };
  return known.missing;
}
function load(): string | undefined {
  const path = require.resolve(nativeCrypto, { paths: [require.resolve('matrix-bot-sdk')] });
  try {
    require(path);
    return undefined;
  } catch (problem) {
    const empty = new Module(path);
    empty.filename = path;
    empty.loaded = true;
    empty.exports = {};
    require.cache[path] = empty;
    const why = problem instanceof Error ? problem.message.split('\n', 1)[0] : String(problem);
    return `The encryption library's native module is not on this machine (${why}).`;
  }
}
/** The SDK, whether or not the native crypto module is there. */
export async function loadSdk(): Promise<typeof import('matrix-bot-sdk')> {
  fallBackWithoutCrypto();
  return import('matrix-bot-sdk');
}
