import type { Place, PlaceId } from '../../../questions/places.ts';
import { type PlaceFigure, placeFigures, placeName } from '../../../statements/place-words.ts';
import { useBook } from '../../book.ts';
import { say } from '../../say.ts';

/** Every place with its units and money now; each opens its running list. */
export function PlaceList(props: {
  readonly places: readonly Place[];
  readonly chosen: PlaceId | undefined;
}) {
  return (
    <nav class="place-list" aria-label={say`Places`}>
      <h2 class="column-head">{say`Where everything is`}</h2>
      <ul>
        {props.places.map((place) => (
          <li key={place.place}>
            <PlaceCard place={place} chosen={place.place === props.chosen} />
          </li>
        ))}
      </ul>
    </nav>
  );
}

function PlaceCard({ place, chosen }: { readonly place: Place; readonly chosen: boolean }) {
  const { currency } = useBook();
  return (
    <a
      class="place-card"
      href={`/places/${place.place}`}
      aria-current={chosen ? 'true' : undefined}
    >
      <span class="place-name">
        {placeName(place.place, say)}
        {place.negative && <span class="place-flag">{say`▲ more out than in`}</span>}
      </span>
      <span class="place-figures">
        {placeFigures(place, currency, say).map((figure) => (
          <span class="place-figure" key={`${figure.about} ${figure.words}`}>
            <Figure figure={figure} />
          </span>
        ))}
      </span>
    </a>
  );
}

/** A figure with its shape and the words for its direction. */
export function Figure({ figure }: { readonly figure: PlaceFigure }) {
  return (
    <span class={`figure figure-${figure.about}`}>
      {figure.about === 'difference' ? (
        <span class="shape shape-difference" aria-hidden="true">
          ▲
        </span>
      ) : (
        <span class={`shape shape-${figure.about}`} aria-hidden="true" />
      )}
      <span class="figure-number">{figure.text}</span>{' '}
      <span class="figure-words">{figure.words}</span>
    </span>
  );
}
