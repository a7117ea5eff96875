import { englishLanguage } from './language.ts';
import { type Say, sayIn } from './say.ts';

/** What the command line and tests say: the texts as they stand in the code. */
export const english: Say = sayIn(englishLanguage);
