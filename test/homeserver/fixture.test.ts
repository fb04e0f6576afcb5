import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Member } from './member.js';
import { Synapse } from './synapse.js';

describe('the suite itself', () => {
  let server: Synapse;
  let dir: string;
  let robin: Member;
  let sam: Member;
  beforeAll(async () => {
    dir = await mkdtemp(join(tmpdir(), 'stubaxle-homeserver-'));
    server = await Synapse.start({ dir });
    robin = await Member.join(server, await server.register('robin'));
    sam = await Member.join(server, await server.register('sam'));
  });
  afterAll(async () => {
    robin?.stop();
    sam?.stop();
    await server?.down();
    await rm(dir, { recursive: true, force: true });
  });

  it('lets one member hear another, also after the homeserver was stopped and started', async () => {
    const room = await robin.makeRoom({ name: 'paddock' });
    await sam.client.joinRoom(room);
    const said = await robin.say(room, 'hello');
    expect((await sam.hear((h) => h.id === said, 'hello')).content.body).toBe('hello');
    await server.down();
    await server.up();
    const again = await robin.say(room, 'still here');
    expect((await sam.hear((h) => h.id === again, 'still here', 30_000)).content.body).toBe('still here');
  });
});
