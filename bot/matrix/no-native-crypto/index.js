/**
 * matrix-bot-sdk requires a native encryption module as it loads. The bot never encrypts by way of the SDK, so this stands in that module's place: nothing
 * native is fetched or built. Whoever asks it for anything is told so, instead of meeting an undefined class.
 */
module.exports = new Proxy(
  {},
  {
    get(_, name) {
      // What loaders themselves ask of every module.
      if (typeof name === 'symbol' || name === '__esModule' || name === 'default' || name === 'then') return undefined;
      throw new Error(`matrix-bot-sdk's own encryption (${name}) is not part of this bot`);
    },
  },
);
