import { signal } from '@preact/signals';

/**
 * Has the browser keep the app's own files, so that it opens without the server, and notices when
 * there is a newer version. Nothing is ever reloaded by itself: somebody may be typing.
 */

/** Starts the newer version that is ready; undefined while there is none. */
export const newVersion = signal<(() => void) | undefined>(undefined);

const WORKER = '/sw.js';
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

/** Trusted Types (W3C), as far as they are needed here; not every browser has them. */
interface TrustedTypes {
  createPolicy(
    name: string,
    rules: { createScriptURL(): string },
  ): { createScriptURL(text: string): string };
}

declare const trustedTypes: TrustedTypes | undefined;

/** The server's policy lets no text become a script's address, but for the one named here. */
async function register(): Promise<ServiceWorkerRegistration> {
  const policy =
    typeof trustedTypes === 'undefined'
      ? undefined
      : trustedTypes.createPolicy('cratebook-worker', { createScriptURL: () => WORKER });
  const address = policy?.createScriptURL(WORKER) ?? WORKER;
  return navigator.serviceWorker.register(address, { updateViaCache: 'none' });
}
