import { useSignal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';

/**
 * A part of a page in a chunk of its own, so that the page itself stays small. Its room
 * is kept until it is there; without a connection the page simply lacks it. `load` must stay the
 * same.
 */
export function Later(props: { readonly load: () => Promise<ComponentType> }) {
  const part = useSignal<ComponentType | undefined>(undefined);
  const missing = useSignal(false);
  const { load } = props;
  useEffect(() => {
    let stale = false;
    load().then(
      (loaded) => {
        if (!stale) part.value = loaded;
      },
      () => {
        if (!stale) missing.value = true;
      },
    );
    return () => {
      stale = true;
    };
  }, [load, part, missing]);
  if (part.value === undefined) return missing.value ? null : <div class="later" />;
  return <part.value />;
}
