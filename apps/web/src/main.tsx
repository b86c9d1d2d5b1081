import { render } from 'preact';
import './look/index.css';
import { createSessionStore } from './session/session-store.ts';
import { App } from './shell/app.tsx';
import { createClient } from './wire/client.ts';

const client = createClient((input, init) => fetch(input, init));
const session = createSessionStore(client);
const newKey = (): string => crypto.randomUUID();
const place = document.getElementById('app');
if (place === null) throw new Error('The page has no place for the app.');
render(<App client={client} session={session} newKey={newKey} />, place);
await session.look();
