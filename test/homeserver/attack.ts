/**
 * Sam is after what robin keeps: a car of which the name and every number are nobody else's. What sam may not see must not be in anything that the
 * homeserver gives to sam: messages, edits of them, files, pictures.
 */
import { z } from 'zod';
import { Club } from './club.js';
import type { Heard, Member } from './member.js';

/** As told, and in the other units: 1 lb/in = 0.175127 N/mm, 1 lb = 0.453592 kg. Figures that are worked out from them are not looked for. */
const numbers = /(?<![\d.,])(?:437|281|2,?613)(?![\d,]|\.\d)|76\.53? N\/mm|49\.21? N\/mm|1,?185(?:\.\d)? kg/;
const name = /quince/i;

export interface Told {
  readonly event: Heard;
  /** The line that it answers, and what that was edited into. */
  readonly asked: string;
  readonly text: string;
}
/** A name that sam has typed is no news to sam; nor is it in what sam was told and takes along. */
export const isCanary = ({ text, asked }: Told): boolean =>
  numbers.test(text) || (name.test(text) && !name.test(asked) && !/^export/.test(asked));

const exported = z.object({ texts: z.array(z.object({ what: z.string(), text: z.string() })) });
/** What a file with a member's data says that the member has not typed: what they were told, and not what they said. */
async function fileText(who: Member, address: unknown): Promise<string> {
  const at = who.client.mxcUrlToHttp(String(address), undefined, undefined, undefined, false, true, true);
  const file = await fetch(at ?? '', { headers: { authorization: `Bearer ${who.client.getAccessToken()}` } });
  if (!file.ok) return '';
  const { texts } = exported.parse(await file.json());
  return texts.flatMap(({ what, text }) => (what === 'message' ? [] : [text])).join('\n');
}
const relationOf = ({ content }: Heard) => content['m.relates_to'];
/** All texts of an event: plain, formatted, of an edit, of a file. */
async function textOf(who: Member, { content }: Heard): Promise<string> {
  const file = content.msgtype === 'm.file' ? [await fileText(who, content.url)] : [];
  const newer = content['m.new_content'];
  return [content.body, content.formatted_body, content.filename, newer?.body, newer?.formatted_body, ...file].filter(Boolean).join('\n');
}
export const isPicture = ({ event }: Told): boolean => event.content.msgtype === 'm.image';
export const isFile = ({ event }: Told): boolean => event.content.msgtype === 'm.file';

export class Attack {
  readonly club: Club;
  /** Each member's own chat with the bot. */
  readonly robins: string;
  readonly sams: string;
  #cars = 0;

  private constructor(club: Club, robins: string, sams: string) {
    this.club = club;
    this.robins = robins;
    this.sams = sams;
  }
  static async open(): Promise<Attack> {
    const club = await Club.open();
    const { robin, sam, bot } = club;
    const attack = new Attack(
      club,
      await robin.makeRoom({ direct: true, invite: [bot.id] }),
      await sam.makeRoom({ direct: true, invite: [bot.id] }),
    );
    await club.ask(
      sam,
      attack.sams,
      'save moth 2150 lb, 62% front, wheelbase 93 in\nset front spring 300 lb/in, rear spring 340 lb/in\nset front motion ratio 0.95, rear motion ratio 0.68',
    );
    return attack;
  }
  /** A car of robin's that nobody else sees yet; its name. */
  async plant(): Promise<string> {
    const car = `quince${String.fromCharCode(97 + this.#cars++)}`;
    await this.club.ask(
      this.club.robin,
      this.robins,
      `save ${car} 2613 lb, 52.5% front, wheelbase 99 in\nset front spring 437 lb/in, rear spring 281 lb/in\nset front motion ratio 0.71, rear motion ratio 0.65`,
    );
    return car;
  }
  /** All that is under way in the room before this is done, and what it says is said. */
  async fence(who: Member, room: string): Promise<void> {
    await this.club.ask(who, room, '!hello');
  }
  /** What the bot has said in a room, as the homeserver shows it to a member now; nothing where it does not let them in. */
  async told(who: Member, room: string): Promise<readonly Told[]> {
    const events = await who.everything(room).catch(() => who.heard.filter((heard) => heard.room === room));
    const said = events.filter(({ sender, type }) => sender === this.club.bot.id && type === 'm.room.message');
    const linesOf = (event: Heard, depth = 0): string => {
      const { rel_type, event_id, 'm.in_reply_to': reply } = relationOf(event) ?? {};
      const target = events.find(({ id }) => id === (rel_type === 'm.replace' ? event_id : reply?.event_id));
      if (target === undefined || depth > 2) return '';
      if (target.sender === this.club.bot.id) return linesOf(target, depth + 1);
      const edits = events.filter((edit) => relationOf(edit)?.rel_type === 'm.replace' && relationOf(edit)?.event_id === target.id);
      return [target, ...edits].map(({ content }) => content.body).join('\n');
    };
    return Promise.all(said.map(async (event) => ({ event, asked: linesOf(event), text: await textOf(who, event) })));
  }
  /** What robin has asked for, wherever that is, is robin's to say. */
  isRobins({ event: { content } }: Told): boolean {
    return [content, content['m.new_content'] ?? {}].some((one) => one['m.mentions']?.user_ids?.includes(this.club.robin.id));
  }
  /** Asks in a thread of its own. */
  async inThread(
    who: Member,
    room: string,
    body: string,
  ): Promise<{ readonly root: string; readonly asked: string; readonly reply: Heard }> {
    const root = await who.say(room, 'about springs');
    const asked = await who.inThread(room, root, body);
    return { root, asked, reply: await who.reply(asked, this.club.bot.id) };
  }
  /** By the homeserver, whatever the client believes. */
  async comeBack(who: Member, room: string): Promise<void> {
    await who.client.http.authedRequest('POST' as never, `/join/${encodeURIComponent(room)}`, undefined, {});
  }
  /** Until the bot has come in so many times. */
  async botIsIn(who: Member, room: string, times: number): Promise<void> {
    const comings = () =>
      who.heard.filter(
        (h) => h.room === room && h.sender === this.club.bot.id && h.type === 'm.room.member' && h.content.membership === 'join',
      );
    await who.hear((h) => comings().length >= times && comings().includes(h), 'the bot come in');
  }
  state(who: Member, room: string, type: string, content: object, key = ''): Promise<unknown> {
    return who.client.sendStateEvent(room, type as never, content as never, key);
  }
}
