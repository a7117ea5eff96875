/**
 * The word in a prize choice for "no prize here, thank you": the seller, or its family, forgoes
 * what the step earns. It may be chosen at every step, also at one that offers nothing to choose.
 */
export const NO_PRIZE = 'none';

/** True where a choice is one that the step offers: its prize where there is nothing to choose. */
export function isOffered(
  level: { readonly prize: string; readonly choices?: readonly string[] },
  choice: string,
): boolean {
  if (choice === NO_PRIZE) return true;
  const { choices = [], prize } = level;
  return choices.length === 0 ? choice === prize : choices.includes(choice);
}
