import { signal } from '@preact/signals';

/**
 * How this device was taken off, once it keeps nothing any more; no book may be opened by itself
 * after that. `signed-in` where the server could not be told that the session ends.
 */
export const takenOff = signal<'signed-out' | 'signed-in' | undefined>(undefined);
