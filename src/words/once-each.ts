import type { Say } from './say.ts';

/** A table of words, made once for each language that asks for it. */
export function onceEach<T>(make: (say: Say) => T): (say: Say) => T {
  const made = new WeakMap<Say, { readonly value: T }>();
  return (say) => {
    const known = made.get(say);
    if (known !== undefined) return known.value;
    const value = make(say);
    made.set(say, { value });
    return value;
  };
}
