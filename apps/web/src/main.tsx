import { render } from 'preact';
import './look/index.css';
import { createSessionStore } from './session/session-store.ts';
import { App } from './shell/app.tsx';
import { createBooksClient } from './wire/books-client.ts';
import { createAsk, createClient } from './wire/client.ts';

const fetchFn: typeof fetch = (input, init) => fetch(input, init);
const client = createClient(fetchFn);
const books = createBooksClient(createAsk(fetchFn));
const session = createSessionStore(client);
const newKey = (): string => crypto.randomUUID();
const place = document.getElementById('app');
if (place === null) throw new Error('The page has no place for the app.');
render(<App client={client} books={books} session={session} newKey={newKey} />, place);
await session.look();
