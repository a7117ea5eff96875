import { type FirstStep, howFar } from '../../../questions/first-steps.ts';
import { useBook } from '../../book.ts';
import { StateMark } from '../../parts/state-mark.tsx';
import { say } from '../../say.ts';

const STEPS: Readonly<Record<FirstStep, readonly [to: string, words: string, about: string]>> = {
  season: ['/set-up/season', say`Season`, say`its name, currency, first and last day`],
  products: ['/products', say`Products and prices`, say`from the supplier’s price list`],
  sellers: ['/set-up/paste', say`Families and sellers`, say`pasted from a spreadsheet`],
  delivery: ['/add/delivery', say`The first delivery`, say`as it was counted`],
  'goods-out': ['/add/handover', say`The first goods out`, say`to a family that signs for them`],
};

/** What a new book still needs, in order; gone once the first goods are out. */
export function FirstStepsList() {
  const { steps, next } = howFar(useBook().ledger);
  if (next === undefined) return null;
  return (
    <section class="first-steps" aria-labelledby="first-steps">
      <h2 class="column-head" id="first-steps">
        {say`First steps`}
      </h2>
      <ol>
        {steps.map(({ step, done }) => {
          const [to, words, about] = STEPS[step];
          const now = step === next;
          return (
            <li key={step} class={now ? 'first-step first-step-now' : 'first-step'}>
              <a href={to} aria-current={now ? 'step' : undefined}>
                {words}
              </a>
              <span class="soft">{about}</span>
              <StateMark
                mark={done ? 'done' : now ? 'open' : 'ahead'}
                word={done ? say`done` : now ? say`now` : say`later`}
              />
            </li>
          );
        })}
      </ol>
    </section>
  );
}
