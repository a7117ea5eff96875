import { say } from '../../say.ts';
import './board.css';
import { placeIds, places } from '../../../questions/places.ts';
import { placeName } from '../../../statements/place-words.ts';
import { useBook } from '../../book.ts';
import { Page } from '../../parts/page.tsx';
import { useSettled } from '../../parts/use-settled.ts';
import type { ScreenProps } from '../../routes.ts';
import { Attention } from './attention.tsx';
import { FirstStepsList } from './first-steps.tsx';
import { PlaceList } from './place-list.tsx';
import { PlaceRoll } from './place-roll.tsx';
import { Proof } from './proof.tsx';
import { Roll } from './roll.tsx';

/**
 * Home: where everything is. The total line on top, the places left, the running list (or the
 * chosen place's) in the middle, what needs attention right; on a phone one below the other.
 */
export function BoardScreen({ params, search }: ScreenProps) {
  const book = useBook();
  const board = places(book.ledger);
  const chosen = placeIds.find((place) => place === params.place);
  // The places come first: what was written last is a second look, and further down on a phone.
  const second = useSettled(true, '', 0);
  return (
    <Page
      title={chosen === undefined ? say`Places` : placeName(chosen, say)}
      layout={chosen === undefined ? 'board' : 'board board-place'}
      above={chosen !== undefined && <a href="/">{say`Places`}</a>}
    >
      {chosen === undefined && <FirstStepsList />}
      <Proof places={board} />
      <div class="board-columns">
        <PlaceList places={board.places} chosen={chosen} />
        {chosen === undefined ? (
          second ? (
            <Roll />
          ) : (
            <section class="roll" />
          )
        ) : (
          <PlaceRoll place={chosen} show={search.get('show')} key={chosen} />
        )}
        <Attention />
      </div>
    </Page>
  );
}
