import { signal } from '@preact/signals';
import { scriptAddress } from '../script-address.ts';

/**
 * Has the browser keep the app's own files, so that it opens without the server, and notices when
 * there is a newer version. Nothing is ever reloaded by itself: somebody may be typing.
 */

/** Starts the newer version that is ready; undefined while there is none. */
export const newVersion = signal<(() => void) | undefined>(undefined);

const START = 'start the new version';

export async function keepAppOffline(): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  const registration = await register().catch(() => undefined);
  if (registration === undefined) return;
  const offer = (): void => {
    const { waiting } = registration;
    // The first one of all replaces nothing.
    if (waiting === null || navigator.serviceWorker.controller === null) return;
    newVersion.value = () => {
      navigator.serviceWorker.addEventListener('controllerchange', () => location.reload());
      waiting.postMessage(START);
    };
  };
  offer();
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', offer);
  });
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') void registration.update().catch(() => undefined);
  });
  // Asked for once there is something to keep; a browser may say no, and then keeps it all the same
  // as long as there is room.
  await navigator.storage?.persist?.().catch(() => false);
}

function register(): Promise<ServiceWorkerRegistration> {
  return navigator.serviceWorker.register(scriptAddress('/sw.js'), { updateViaCache: 'none' });
}
