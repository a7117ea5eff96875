import { render } from 'preact';
import { assert } from '../base/assert.ts';
import { App } from './app.tsx';
import { fetchOrAsked } from './ask-early.ts';
import { httpConnection } from './connection.ts';
import { watchAddress } from './navigation.ts';
import { keepAppOffline } from './offline/keep-app-offline.ts';
import { GoneWrong, watchFaults } from './parts/gone-wrong.tsx';
import { routeAt } from './routes.ts';
import { say } from './say.ts';
import { thisDevice } from './this-device.ts';
import './styles/palette.css';
import './styles/base.css';
import './styles/frame.css';
import './styles/parts.css';
import './styles/screens.css';
import './styles/forced-colors.css';
import './styles/print.css';

/** What was opened is on the screen before anything else is fetched, on the same line. */
const SCREEN_FIRST_MS = 1500;

/** Starts the app in the browser: the one place that hands it its device and its connection. */
const root = document.getElementById('app');
assert(root !== null, 'index.html has the element that the app is drawn into');
document.documentElement.lang = say.language.tag;
watchAddress();
watchFaults();
// The first screen comes while the book is opened, not after it.
loadAhead(location.pathname);
const machine = await thisDevice();
const connection = httpConnection(fetchOrAsked);
render(
  <GoneWrong>
    <App connection={connection} machine={machine} onOpened={prepareRest} />
  </GoneWrong>,
  root,
);

/** All files of the app are kept, and what is opened most is ready before it is tapped. */
function prepareRest(): void {
  setTimeout(() => {
    void keepAppOffline();
    loadAhead('/add/payment');
  }, SCREEN_FIRST_MS);
}

/** A screen that does not come now is asked for again, and told of, when it is gone to. */
function loadAhead(path: string): void {
  void routeAt(path)
    ?.load()
    .catch(() => undefined);
}
