import { signal } from '@preact/signals';

/** True once this device keeps nothing any more; no book may be opened by itself after that. */
export const isTakenOff = signal(false);
