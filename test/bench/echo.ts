/** The floor to be measured against: the least that a bot on this SDK can be. It answers every text with the same text. */
import { MatrixClient, SimpleFsStorageProvider } from 'matrix-bot-sdk';

const [url, token, file] = process.argv.slice(2);
if (!url || !token || !file) throw new Error('usage: echo URL TOKEN STATE-FILE');

const client = new MatrixClient(url, token, new SimpleFsStorageProvider(file));
const me = await client.getUserId();
client.on('room.invite', (room: string) => client.joinRoom(room));
client.on('room.message', (room: string, event: { sender: string; event_id: string; content: { msgtype?: string; body?: string } }) => {
  if (event.sender === me || event.content.msgtype !== 'm.text') return;
  void client.sendMessage(room, {
    msgtype: 'm.notice',
    body: event.content.body,
    'm.relates_to': { 'm.in_reply_to': { event_id: event.event_id } },
  });
});
await client.start();
process.stdout.write('ready\n');
