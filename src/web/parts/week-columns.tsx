import '../styles/pictures.css';
import { say } from '../say.ts';

export type Drawn = 'full' | 'hollow' | 'dashed';

export interface WeekColumn {
  /** The week's first day. */
  readonly from: string;
  /** One bar for each row of the legend: up from zero, or down where it is negative. */
  readonly bars: readonly number[];
  /** A line across the column: where something stood at the week's end. */
  readonly mark?: number;
}

const COLUMN = 12;
const GAP = 2;
const HEIGHT = 100;

/**
 * Columns week by week around one zero, told apart by how they are drawn and not by colour. The
 * drawing is hidden from screen readers: wrap it in a Picture with a name and a table.
 */
export function WeekColumns(props: {
  readonly weeks: readonly WeekColumn[];
  readonly legend: readonly (readonly [drawn: Drawn | 'mark', words: string])[];
}) {
  const { weeks, legend } = props;
  const amounts = weeks.flatMap(({ bars, mark }) => [...bars, mark ?? 0]);
  const top = Math.max(0, ...amounts);
  const span = top - Math.min(0, ...amounts) || 1;
  const y = (amount: number) => ((top - amount) / span) * HEIGHT;
  const looks = legend.flatMap(([drawn]) => (drawn === 'mark' ? [] : [drawn]));
  const width = weeks.length * COLUMN;
  return (
    <div aria-hidden="true">
      <svg
        class="weeks"
        viewBox={`0 0 ${width} ${HEIGHT}`}
        preserveAspectRatio="none"
        aria-hidden="true"
      >
        {weeks.map((week, at) => (
          <Column key={week.from} week={week} x={at * COLUMN} y={y} looks={looks} />
        ))}
        <line class="weeks-zero" x1="0" x2={width} y1={y(0)} y2={y(0)} />
      </svg>
      <p class="weeks-ends">
        <span>{say`week of ${say.day(weeks[0]?.from ?? '')}`}</span>
        <span>{weeks.length > 1 && say.day(weeks.at(-1)?.from ?? '')}</span>
      </p>
      <ul class="picture-legend">
        {legend.map(([drawn, words]) => (
          <li key={words}>
            <Swatch drawn={drawn} />
            {words}
          </li>
        ))}
      </ul>
    </div>
  );
}

function Column(props: {
  readonly week: WeekColumn;
  readonly x: number;
  readonly y: (amount: number) => number;
  readonly looks: readonly Drawn[];
}) {
  const { week, x, y, looks } = props;
  const wide = (COLUMN - GAP) / looks.length;
  return (
    <g>
      <rect class="weeks-track" x={x + GAP / 2} y="0" width={COLUMN - GAP} height={HEIGHT} />
      {week.bars.map((amount, at) => {
        const from = Math.min(y(0), y(amount));
        const drawn = looks[at] ?? 'full';
        return amount === 0 ? null : (
          <rect
            key={drawn}
            class={`drawn-${drawn}`}
            x={x + GAP / 2 + at * wide + wide * 0.08}
            width={wide * 0.84}
            y={from}
            height={Math.max(1, Math.abs(y(amount) - y(0)))}
          />
        );
      })}
      {week.mark !== undefined && (
        <line
          class="weeks-mark"
          x1={x + GAP / 2}
          x2={x + COLUMN - GAP / 2}
          y1={y(week.mark)}
          y2={y(week.mark)}
        />
      )}
    </g>
  );
}

function Swatch({ drawn }: { readonly drawn: Drawn | 'mark' }) {
  return (
    <svg viewBox="0 0 10 10" aria-hidden="true">
      {drawn === 'mark' ? (
        <line class="weeks-mark" x1="0" x2="10" y1="5" y2="5" />
      ) : (
        <rect class={`drawn-${drawn}`} x="1" y="1" width="8" height="8" />
      )}
    </svg>
  );
}
