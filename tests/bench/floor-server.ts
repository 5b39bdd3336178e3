import Database from 'better-sqlite3';
import { WebSocketServer } from 'ws';

// The least that could do it: a tap comes in, one durable insert of as many bytes as the journal keeps for it, the same bytes out to
// everybody, and an answer to who tapped. Arguments: port, database, the text to send to everybody, the text of the answer.
const [port = '', path = '', events = '', answer = ''] = process.argv.slice(2);
/** What the journal keeps for a tap with one event, about: its body, its hash, its ids. */
const KEPT_BYTES = 150;

const database = new Database(path);
database.pragma('journal_mode = WAL');
database.pragma('synchronous = FULL');
database.exec('CREATE TABLE kept (id INTEGER PRIMARY KEY, body BLOB) STRICT');
const insert = database.prepare('INSERT INTO kept (body) VALUES (?)');
const body = Buffer.alloc(KEPT_BYTES, 7);

const server = new WebSocketServer({ port: Number(port), host: '127.0.0.1', perMessageDeflate: false });
server.on('connection', (socket) => {
  socket.on('message', () => {
    insert.run(body);
    socket.send(answer);
    for (const client of server.clients) client.send(events);
  });
});
