import {
  cleanupOutdatedCaches,
  createHandlerBoundToURL,
  precacheAndRoute,
} from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';

/**
 * Runs beside the app in the browser and answers for its own files, so that every screen opens
 * without the server. Only the files of this build are kept, by name; what is asked of the server
 * (`/api/…`) is never answered, read or kept here, and the key in the printed address never gets
 * into a kept name.
 */
interface Worker {
  addEventListener(type: 'message', heard: (message: { readonly data: unknown }) => void): void;
  skipWaiting(): Promise<void>;
}

/** Filled in by the build: every file of the app. */
declare const APP_FILES: readonly { readonly url: string; readonly revision: string | null }[];
declare const self: Worker;

cleanupOutdatedCaches();
precacheAndRoute([...APP_FILES]);
const isNoScreen = [/^\/api\//, /\.\w+$/];
registerRoute(
  new NavigationRoute(createHandlerBoundToURL('/index.html'), { denylist: isNoScreen }),
);
// A newer worker waits until every window is closed, or until somebody asks for it.
self.addEventListener('message', ({ data }) => {
  if (data === 'start the new version') void self.skipWaiting();
});
