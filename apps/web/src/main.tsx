import { render } from 'preact';
import './look/index.css';
import { createSessionStore } from './session/session-store.ts';
import { App } from './shell/app.tsx';
import { createBooksClient } from './wire/books-client.ts';
import { createAsk, createClient } from './wire/client.ts';

const fetchFn: typeof fetch = (input, init) => fetch(input, init);
const ask = createAsk(fetchFn);
const client = createClient(fetchFn);
const books = createBooksClient(ask);
const session = createSessionStore(client);
const newKey = (): string => crypto.randomUUID();
const nowMs = (): number => Date.now();
const place = document.getElementById('app');
if (place === null) throw new Error('The page has no place for the app.');
render(<App {...{ client, books, session, ask, newKey, nowMs }} />, place);
await session.look();
