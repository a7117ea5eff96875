import { render } from 'preact';
import { assert } from '../base/assert.ts';
import { App } from './app.tsx';
import type { Machine } from './book.ts';
import { httpConnection } from './connection.ts';
import { watchAddress } from './navigation.ts';
import './styles/palette.css';
import './styles/base.css';
import './styles/frame.css';
import './styles/parts.css';
import './styles/screens.css';
import './styles/print.css';

/** Starts the app in the browser: the one place that reads its clock and its randomness. */
const machine: Machine = {
  now: () => Date.now(),
  random: (bytes) => crypto.getRandomValues(new Uint8Array(bytes)),
  today: () => {
    const now = new Date();
    const part = (number: number) => String(number).padStart(2, '0');
    return `${now.getFullYear()}-${part(now.getMonth() + 1)}-${part(now.getDate())}`;
  },
};

const root = document.getElementById('app');
assert(root !== null, 'index.html has the element that the app is drawn into');
watchAddress();
render(<App connection={httpConnection(fetch.bind(globalThis))} machine={machine} />, root);
