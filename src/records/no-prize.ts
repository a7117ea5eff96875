/**
 * The word in a prize choice for "no prize here, thank you": the seller, or its family, forgoes
 * what the step earns. It may be chosen at every step, also at one that offers nothing to choose.
 */
export const NO_PRIZE = 'none';
