import type { ComponentType } from 'preact';

/**
 * Every page of the app: its address, and the chunk its screen comes in. `:name` in an address is a
 * part that the screen gets in `params`. The first row that fits counts.
 */
export interface ScreenProps {
  readonly params: Readonly<Record<string, string>>;
  readonly search: URLSearchParams;
}

export type Screen = ComponentType<ScreenProps>;

interface Route {
  readonly path: string;
  readonly load: () => Promise<Screen>;
}

const board = () => import('./screens/board/board-screen.tsx');
const add = () => import('./screens/form/add-screen.tsx');

const routes: readonly Route[] = [
  { path: '/', load: async () => (await board()).BoardScreen },
  { path: '/places/:place', load: async () => (await board()).BoardScreen },
  {
    path: '/accounts/:ledger/:account',
    load: async () => (await import('./screens/board/account-screen.tsx')).AccountScreen,
  },
  { path: '/add', load: async () => (await add()).AddScreen },
  {
    path: '/add/:kind',
    load: async () => (await import('./screens/form/form-screen.tsx')).FormScreen,
  },
  {
    path: '/records/:id',
    load: async () => (await import('./screens/record/record-screen.tsx')).RecordScreen,
  },
  {
    path: '/records/:id/edit',
    load: async () => (await import('./screens/form/edit-screen.tsx')).EditScreen,
  },
  { path: '/find', load: async () => (await import('./screens/find/find-screen.tsx')).FindScreen },
  {
    path: '/families',
    load: async () => (await import('./screens/families/families-screen.tsx')).FamiliesScreen,
  },
  {
    path: '/families/:family',
    load: async () => (await import('./screens/family/family-screen.tsx')).FamilyScreen,
  },
  {
    path: '/statements',
    load: async () => (await import('./screens/families/statements-screen.tsx')).StatementsScreen,
  },
  {
    path: '/stalls',
    load: async () => (await import('./screens/stalls/stalls-screen.tsx')).StallsScreen,
  },
  {
    path: '/stalls/:stall',
    load: async () => (await import('./screens/stall/stall-screen.tsx')).StallScreen,
  },
  {
    path: '/stalls/:stall/sell',
    load: async () => (await import('./screens/stall/sell-screen.tsx')).SellScreen,
  },
  {
    path: '/stalls/:stall/sheet',
    load: async () => (await import('./screens/stall/sheet-screen.tsx')).SheetScreen,
  },
  {
    path: '/stalls/:stall/sheet/:part',
    load: async () => (await import('./screens/stall/sheet-part-screen.tsx')).SheetPartScreen,
  },
  {
    path: '/pools/:pool',
    load: async () => (await import('./screens/share/pool-screen.tsx')).PoolScreen,
  },
  {
    path: '/pools/:pool/lift',
    load: async () => (await import('./screens/share/lift-screen.tsx')).LiftScreen,
  },
  {
    path: '/count',
    load: async () => (await import('./screens/count/count-screen.tsx')).CountScreen,
  },
  {
    path: '/count/:count',
    load: async () => (await import('./screens/count/count-result-screen.tsx')).CountResultScreen,
  },
  {
    path: '/set-up',
    load: async () => (await import('./screens/set-up/set-up-screen.tsx')).SetUpScreen,
  },
  {
    path: '/set-up/:part',
    load: async () => (await import('./screens/set-up/set-up-part-screen.tsx')).SetUpPartScreen,
  },
  {
    path: '/products',
    load: async () => (await import('./screens/products/products-screen.tsx')).ProductsScreen,
  },
  {
    path: '/prizes',
    load: async () => (await import('./screens/prizes/prizes-screen.tsx')).PrizesScreen,
  },
  {
    path: '/prizes/order',
    load: async () => (await import('./screens/prizes/prize-order-screen.tsx')).PrizeOrderScreen,
  },
  {
    path: '/prizes/hand-out',
    load: async () => (await import('./screens/prizes/hand-out-screen.tsx')).HandOutScreen,
  },
  {
    path: '/hosts/:host',
    load: async () => (await import('./screens/hosts/host-report-screen.tsx')).HostReportScreen,
  },
  {
    path: '/match/bank',
    load: async () => (await import('./screens/match/bank-match-screen.tsx')).BankMatchScreen,
  },
  {
    path: '/match/supplier',
    load: async () =>
      (await import('./screens/match/supplier-match-screen.tsx')).SupplierMatchScreen,
  },
  {
    path: '/match/debits',
    load: async () => (await import('./screens/match/debits-screen.tsx')).DebitsScreen,
  },
  {
    path: '/match/reconciliation',
    load: async () =>
      (await import('./screens/match/reconciliation-screen.tsx')).ReconciliationScreen,
  },
  {
    path: '/closing',
    load: async () => (await import('./screens/closing/closing-screen.tsx')).ClosingScreen,
  },
  {
    path: '/closing/close',
    load: async () => (await import('./screens/closing/close-screen.tsx')).CloseScreen,
  },
  {
    path: '/closing/first',
    load: async () =>
      (await import('./screens/closing/first-closing-screen.tsx')).FirstClosingScreen,
  },
  {
    path: '/words',
    load: async () => (await import('./screens/words/words-screen.tsx')).WordsScreen,
  },
  {
    path: '/why',
    load: async () => (await import('./screens/why/why-screen.tsx')).WhyScreen,
  },
  {
    path: '/phone',
    load: async () => (await import('./screens/phone/phone-screen.tsx')).PhoneScreen,
  },
];

/** The screens whose chunk is here. */
const here = new Map<Route, Screen>();

export interface Found {
  readonly load: () => Promise<Screen>;
  /** The screen, where its chunk is here. */
  readonly here: Screen | undefined;
  readonly params: Readonly<Record<string, string>>;
}

/** The page at an address, with the parts of the address it names. */
export function routeAt(path: string): Found | undefined {
  for (const route of routes) {
    const params = paramsOf(route.path, path);
    if (params !== undefined) return { load: () => loaded(route), here: here.get(route), params };
  }
  return undefined;
}

async function loaded(route: Route): Promise<Screen> {
  const screen = await route.load();
  here.set(route, screen);
  return screen;
}

function paramsOf(pattern: string, path: string): Record<string, string> | undefined {
  const wanted = pattern.split('/');
  const given = path.replace(/(.)\/$/, '$1').split('/');
  if (wanted.length !== given.length) return undefined;
  const params: Record<string, string> = {};
  for (const [place, part] of wanted.entries()) {
    const said = given[place] ?? '';
    if (part.startsWith(':')) {
      // A broken escape in an address that somebody typed is no page, not a fault.
      if (!/^(?:[^%]|%[0-7][0-9A-Fa-f])+$/.test(said)) return undefined;
      params[part.slice(1)] = decodeURIComponent(said);
    } else if (part !== said) return undefined;
  }
  return params;
}
