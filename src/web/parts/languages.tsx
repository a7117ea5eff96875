import { languages } from '../../words/language.ts';
import { chooseLanguage, say } from '../say.ts';

/** The languages of the app, each in its own name; the chosen one is kept on this device. */
export function Languages() {
  return (
    <ul class="languages no-print" aria-label={say`Language`}>
      {languages.map(({ tag, name }) => (
        <li key={tag}>
          <button
            type="button"
            lang={tag}
            aria-current={tag === say.language.tag ? 'true' : undefined}
            onClick={() => chooseLanguage(tag)}
          >
            {name}
          </button>
        </li>
      ))}
    </ul>
  );
}
