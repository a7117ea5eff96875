import { say } from '../../say.ts';
import '../../styles/tasks.css';
import { useBook } from '../../book.ts';
import { ClosedNotice } from '../../parts/closed-season.tsx';
import { Page } from '../../parts/page.tsx';

/** The way into everything that is set up once and then left alone. */
export function SetUpScreen() {
  const { ledger } = useBook();
  const { setup } = ledger;
  const { season } = setup;
  const active = [...setup.sellers.values()].filter((seller) => seller.active).length;
  const holds = [...setup.holds.values()].filter((hold) => hold.lifted !== true).length;
  const rows: readonly (readonly [to: string, words: string, facts: string])[] = [
    [
      '/set-up/season',
      say`Season and deadlines`,
      season === undefined
        ? say`not set up yet`
        : say`${season.name}, ${season.currency}, ${say.day(season.starts)} to
          ${say.day(season.ends)},
          ${say.count(season.deadlines?.length ?? 0)`# deadline|# deadlines`}`,
    ],
    [
      '/set-up/banking',
      say`The bank’s days`,
      season?.banking === undefined ? say`common practice` : say`as your bank has them`,
    ],
    ['/set-up/paste', say`Paste a seller list`, say`from a spreadsheet, with a preview`],
    ['/set-up/families', say`Families`, `${setup.families.size}`],
    ['/set-up/sellers', say`Sellers`, say`${active} active of ${setup.sellers.size}`],
    ['/products', say`Products and prices`, `${setup.products.size}`],
    ['/set-up/stalls', say`Stalls`, `${setup.stalls.size}`],
    [
      '/set-up/sharing',
      say`Sharing rule`,
      [
        season?.sharing?.weights === 'even' ? say`evenly` : say`by minutes worked`,
        season?.sharing?.lift === true ? say`lifts on` : say`lifts off`,
      ].join(say`, `),
    ],
    ['/set-up/hosts', say`Host shops`, `${setup.hosts.size}`],
    ['/set-up/neighbours', say`Neighbour groups`, `${setup.neighbours.size}`],
    ['/set-up/prize-steps', say`Prize steps`, `${setup.levels.size}`],
    ['/prizes', say`Prizes and choices`, say`who has reached what, and the order list`],
    [
      '/set-up/proceeds',
      say`Proceeds steps`,
      setup.proceeds === undefined
        ? say`not set up yet`
        : say.count(setup.proceeds.steps.length)`# step|# steps`,
    ],
    [
      '/set-up/holds',
      say`Stop-sales`,
      holds === 0 ? say`none` : say.count(holds)`# standing|# standing`,
    ],
  ];
  return (
    <Page
      title={say`Set-up`}
      lead={say`Change a thing here and it holds for the whole book from then on.`}
    >
      <ClosedNotice />
      <ul class="task-list">
        {rows.map(([to, words, facts]) => (
          <li class="task-row" key={to}>
            <a class="task-link" href={to}>
              {words}
            </a>
            <span class="task-facts soft">{facts}</span>
          </li>
        ))}
      </ul>
    </Page>
  );
}
