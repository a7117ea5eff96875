import { say } from '../../say.ts';
import './form.css';
import type { Kind } from '../../../records/record.ts';
import { kindName } from '../../../statements/kind-name.ts';
import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';
import { kindForms, kindGroups } from './kind-forms.ts';

/** Everything that can be recorded, by what it is about. */
export function AddScreen(_props: ScreenProps) {
  return (
    <Page title={say`Record`} lead={say`Choose what happened.`}>
      <div class="kinds">
        {kindGroups.map(([words, kinds]) => (
          <section key={words}>
            <h2 class="column-head">{words}</h2>
            <ul>
              {kinds.map((kind) => (
                <li key={kind}>
                  <a class="kind" href={OWN_PAGES[kind] ?? `/add/${kind}`}>
                    <b>{kindName(kind, say)}</b>
                    <span>{kind === 'void' ? '' : kindForms[kind].about}</span>
                  </a>
                </li>
              ))}
            </ul>
          </section>
        ))}
      </div>
    </Page>
  );
}

/** Kinds with a page of their own that does more than the form. */
const OWN_PAGES: Partial<Record<Kind, string>> = {
  count: '/count',
  'stall-close': '/stalls',
  shareout: '/stalls',
  choice: '/prizes',
  product: '/products',
  season: '/set-up/season',
  family: '/set-up/families',
  seller: '/set-up/sellers',
  host: '/set-up/hosts',
  neighbour: '/set-up/neighbours',
  stall: '/set-up/stalls',
  level: '/set-up/prize-steps',
  proceeds: '/set-up/proceeds',
  hold: '/set-up/holds',
};
