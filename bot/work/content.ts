/** The wire JSON of what the bot says: notices and pictures, to nobody but the asker, in the thread where it was asked. */
import type { Rendered } from './world.js';

/** Our own key in each event: by it a reply is found again when it is not known whether it was sent. */
export const markerKey = 'stubaxle.reply';
export interface Addressee {
  /** The asker, who is the only one mentioned; undefined for what is said to the room. */
  readonly asker: string | undefined;
  readonly thread: string | undefined;
  /** The event that is answered; undefined for what answers none. */
  readonly command: string | undefined;
}
type Json = Readonly<Record<string, unknown>>;

function relation({ thread, command }: Addressee): Json {
  const inReplyTo = command === undefined ? {} : { 'm.in_reply_to': { event_id: command } };
  if (thread !== undefined) return { 'm.relates_to': { rel_type: 'm.thread', event_id: thread, is_falling_back: false, ...inReplyTo } };
  return command === undefined ? {} : { 'm.relates_to': inReplyTo };
}
const mentions = (asker: string | undefined): Json => ({ 'm.mentions': asker === undefined ? {} : { user_ids: [asker] } });
const text = ({ body, html }: Pick<Rendered, 'body' | 'html'>): Json =>
  html === '' ? { body } : { body, format: 'org.matrix.custom.html', formatted_body: html };
const base = ({ body, html, chart }: Pick<Rendered, 'body' | 'html' | 'chart'>): Json =>
  chart === undefined
    ? { msgtype: 'm.notice', ...text({ body, html }) }
    : {
        msgtype: 'm.image',
        // With a file name of its own, the body is the caption: the values in words, which is also what a screen reader reads.
        filename: 'chart.png',
        ...text({ body, html }),
        info: { w: Math.round(chart.width), h: Math.round(chart.height), size: chart.png.byteLength, mimetype: 'image/png' },
      };

export const messageContent = (said: Pick<Rendered, 'body' | 'html' | 'chart'>, to: Addressee): Json => ({
  ...base(said),
  ...mentions(to.asker),
  ...relation(to),
});
/** Takes the place of an earlier reply, whose id the sender puts in. Nobody is notified again. */
export const editContent = (said: Pick<Rendered, 'body' | 'html' | 'chart'>, to: Addressee): Json => {
  const inner = base(said);
  const { msgtype, filename, info } = inner;
  return {
    ...{ msgtype, ...(info === undefined ? {} : { filename, info }) },
    // Only clients that know no edits show this; the whole text twice would not fit into an event.
    body: `* ${said.body.split('\n', 1)[0] ?? ''}`,
    ...mentions(undefined),
    'm.new_content': { ...inner, ...mentions(to.asker) },
    'm.relates_to': { rel_type: 'm.replace' },
  };
};
/** The short form, for a homeserver that refuses the long one. */
export const shortForm = (said: Pick<Rendered, 'body'>): Pick<Rendered, 'body' | 'html'> => ({
  body: `${(said.body.split('\n', 1)[0] ?? '').slice(0, 500)}\n(The rest could not be sent here.)`,
  html: '',
});
export const fileContent = (filename: string, size: number, mimetype: string, to: Addressee): Json => ({
  msgtype: 'm.file',
  body: filename,
  filename,
  info: { size, mimetype },
  ...mentions(to.asker),
  ...relation(to),
});
