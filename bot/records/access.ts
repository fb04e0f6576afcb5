/**
 * Who can read what is said in a room, now or later: what its state events say, read leniently, and the two rules that hang on it. Whatever can't be
 * read counts against privacy.
 */

/** `unknown`: a membership that cannot be read; such a member is counted as being there, and has the rights of nobody. */
export type JoinState = 'join' | 'invite' | 'leave' | 'ban' | 'knock' | 'unknown';
/** A word of a state event: undefined was not told, `unreadable` was told in a way that cannot be read. */
export type Word = string | undefined;
export const unreadable = '?';

export interface Access {
  /** Empty for an ordinary room; else what the room is for (a space). */
  readonly kind: Word;
  readonly joinRule: Word;
  readonly history: Word;
  readonly guests: Word;
  /** An event that may matter could not be read at all. */
  readonly unreadable: boolean;
  /** Everybody but the bot who is or ever was in the room, invited or knocking. */
  readonly people: ReadonlyMap<string, JoinState>;
}
export interface StateEvent {
  readonly type: string;
  readonly state_key: string;
  readonly sender: string;
  readonly content: Readonly<Record<string, unknown>>;
  readonly event?: string | undefined;
  /** Of a member event: what the membership was before it, where the homeserver tells. */
  readonly before?: string | undefined;
}
/** What one state event says of a room. */
export type Told =
  | { readonly told: 'word'; readonly of: 'kind' | 'joinRule' | 'history' | 'guests'; readonly word: string }
  | {
      readonly told: 'person';
      readonly id: string;
      readonly state: JoinState;
      readonly name: string | undefined;
    }
  /** Who made the room was in it: for the case that no membership of theirs is told. */
  | { readonly told: 'maker'; readonly id: string }
  | { readonly told: 'unreadable' };

/** Somebody whom the bot has no id for: not shown to anybody, and counted like everybody else. */
export const nameless = (mark: string): string => `?${mark}`;
/** The type that stands for an event of which not even that can be read. */
export const unreadableType = '?';
/** Types of state that the rules hang on. */
export const accessTypes = [
  'm.room.create',
  'm.room.join_rules',
  'm.room.history_visibility',
  'm.room.guest_access',
  'm.room.member',
  'm.room.third_party_invite',
] as const;

const joinStates: readonly string[] = ['join', 'invite', 'leave', 'ban', 'knock'] satisfies readonly JoinState[];
const isJoinState = (word: unknown): word is JoinState => typeof word === 'string' && joinStates.includes(word);
/** A word that should be there. */
const wordIn = (content: StateEvent['content'], key: string): string => {
  const word = content[key];
  return typeof word === 'string' && word !== '' ? word : unreadable;
};
const aboutRoom = {
  'm.room.join_rules': (content: StateEvent['content']) => ({ of: 'joinRule', word: wordIn(content, 'join_rule') }) as const,
  'm.room.history_visibility': (content: StateEvent['content']) =>
    ({ of: 'history', word: wordIn(content, 'history_visibility') }) as const,
  'm.room.guest_access': (content: StateEvent['content']) => ({ of: 'guests', word: wordIn(content, 'guest_access') }) as const,
};
const isAboutRoom = (type: string): type is keyof typeof aboutRoom => Object.hasOwn(aboutRoom, type);

/** Each part of an event is read by itself: a display name that is a list hides nobody. */
export function readState({ type, state_key, sender, content }: Omit<StateEvent, 'before'>): readonly Told[] {
  if (type === unreadableType) return [{ told: 'unreadable' }];
  if (type === 'm.room.member') {
    const { membership, displayname } = content;
    const name = typeof displayname === 'string' ? displayname : undefined;
    return [{ told: 'person', id: state_key, state: isJoinState(membership) ? membership : 'unknown', name }];
  }
  if (type === 'm.room.third_party_invite') {
    // Taken back, it is left empty. Whoever comes in by it has a membership of their own.
    const state = Object.keys(content).length === 0 ? 'leave' : 'invite';
    return [{ told: 'person', id: nameless(`invited ${state_key}`), state, name: undefined }];
  }
  // Only under the empty key do these say something of the room.
  if (state_key !== '') return [];
  if (type === 'm.room.create') {
    const kind = Object.hasOwn(content, 'type') ? wordIn(content, 'type') : '';
    return [
      { told: 'word', of: 'kind', word: kind },
      { told: 'maker', id: sender },
    ];
  }
  return isAboutRoom(type) ? [{ told: 'word', ...aboutRoom[type](content) }] : [];
}

/** The whole state of a room, as its events tell it. */
export function accessOf(events: readonly StateEvent[], me: string): Access {
  const words: { kind: Word; joinRule: Word; history: Word; guests: Word } = {
    kind: undefined,
    joinRule: undefined,
    history: undefined,
    guests: undefined,
  };
  const people = new Map<string, JoinState>();
  let lost = false;
  for (const told of events.flatMap(readState)) {
    if (told.told === 'unreadable') lost = true;
    else if (told.told === 'word') words[told.of] = told.word;
    else if (told.id !== me && (told.told === 'person' || !people.has(told.id)))
      people.set(told.id, told.told === 'person' ? told.state : 'leave');
  }
  return { ...words, unreadable: lost, people };
}

const there: readonly JoinState[] = ['join', 'invite', 'unknown'];
/** Whether one member alone is in the room or invited, beside the bot: every line of theirs is then for the bot. */
export const isDirect = ({ kind, unreadable: lost, people }: Pick<Access, 'kind' | 'unreadable' | 'people'>): boolean =>
  kind === '' && !lost && [...people.values()].filter((state) => there.includes(state)).length === 1;

/**
 * Whether nobody but this member and the bot can read what is said in the room, now or later, unless one of the two lets them in: it is direct, who
 * comes in must be invited, who is not in it reads nothing, and nobody else was ever in it, who might come back and read.
 */
export function isPrivateTo(access: Access, member: string): boolean {
  const { joinRule, history, guests, people } = access;
  return (
    isDirect(access) &&
    joinRule === 'invite' &&
    (history === 'invited' || history === 'joined' || history === 'shared') &&
    // Guests, too, come into such a room only when they are invited.
    (guests === undefined || guests === 'can_join' || guests === 'forbidden') &&
    people.get(member) === 'join' &&
    people.size === 1
  );
}
