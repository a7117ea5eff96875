/**
 * Printing Plus, a complete bookkeeping example for January: 12 journal entries, 5 adjusting and 4
 * closing entries, with three trial balances. Figures in whole dollars from OpenStax, Principles of
 * Accounting, volume 1, sections 3.5 and 3.6 (journal and unadjusted trial balance), 4.3 and 4.4
 * (adjusting entries, adjusted trial balance), 5.1 and 5.2 (closing entries, post-closing trial
 * balance). Only the figures and account names are taken.
 */

/** Day of January, account debited, dollars, account credited. */
export type Entry = readonly [day: number, debit: string, dollars: number, credit: string];

export const journal: readonly Entry[] = [
  [3, 'Cash', 20_000, 'Common Stock'],
  [5, 'Equipment', 3_500, 'Accounts Payable'],
  [9, 'Cash', 4_000, 'Unearned Revenue'],
  [10, 'Accounts Receivable', 5_500, 'Service Revenue'],
  [12, 'Utility Expense', 300, 'Cash'],
  [14, 'Dividends', 100, 'Cash'],
  [17, 'Cash', 2_800, 'Service Revenue'],
  [18, 'Accounts Payable', 3_500, 'Cash'],
  [20, 'Salaries Expense', 3_600, 'Cash'],
  [23, 'Cash', 5_500, 'Accounts Receivable'],
  [27, 'Accounts Receivable', 1_200, 'Service Revenue'],
  [30, 'Supplies', 500, 'Accounts Payable'],
];

export const adjusting: readonly Entry[] = [
  [31, 'Supplies Expense', 100, 'Supplies'],
  [31, 'Depreciation Expense: Equipment', 75, 'Accumulated Depreciation: Equipment'],
  [31, 'Unearned Revenue', 600, 'Service Revenue'],
  [31, 'Interest Receivable', 140, 'Interest Revenue'],
  [31, 'Salaries Expense', 1_500, 'Salaries Payable'],
];

/** The four closing entries, a line for each account that is closed. */
export const closing: readonly Entry[] = [
  [31, 'Interest Revenue', 140, 'Income Summary'],
  [31, 'Service Revenue', 10_100, 'Income Summary'],
  [31, 'Income Summary', 100, 'Supplies Expense'],
  [31, 'Income Summary', 75, 'Depreciation Expense: Equipment'],
  [31, 'Income Summary', 5_100, 'Salaries Expense'],
  [31, 'Income Summary', 300, 'Utility Expense'],
  [31, 'Income Summary', 4_665, 'Retained Earnings'],
  [31, 'Retained Earnings', 100, 'Dividends'],
];

export interface TrialBalance {
  readonly debit: Readonly<Record<string, number>>;
  readonly credit: Readonly<Record<string, number>>;
  readonly total: number;
}

export const unadjusted: TrialBalance = {
  debit: {
    Cash: 24_800,
    'Accounts Receivable': 1_200,
    Supplies: 500,
    Equipment: 3_500,
    Dividends: 100,
    'Salaries Expense': 3_600,
    'Utility Expense': 300,
  },
  credit: {
    'Accounts Payable': 500,
    'Unearned Revenue': 4_000,
    'Common Stock': 20_000,
    'Service Revenue': 9_500,
  },
  total: 34_000,
};

export const adjusted: TrialBalance = {
  debit: {
    Cash: 24_800,
    'Accounts Receivable': 1_200,
    'Interest Receivable': 140,
    Supplies: 400,
    Equipment: 3_500,
    Dividends: 100,
    'Supplies Expense': 100,
    'Depreciation Expense: Equipment': 75,
    'Salaries Expense': 5_100,
    'Utility Expense': 300,
  },
  credit: {
    'Accumulated Depreciation: Equipment': 75,
    'Accounts Payable': 500,
    'Salaries Payable': 1_500,
    'Unearned Revenue': 3_400,
    'Common Stock': 20_000,
    'Interest Revenue': 140,
    'Service Revenue': 10_100,
  },
  total: 35_715,
};

export const postClosing: TrialBalance = {
  debit: {
    Cash: 24_800,
    'Accounts Receivable': 1_200,
    'Interest Receivable': 140,
    Supplies: 400,
    Equipment: 3_500,
  },
  credit: {
    'Accumulated Depreciation: Equipment': 75,
    'Accounts Payable': 500,
    'Salaries Payable': 1_500,
    'Unearned Revenue': 3_400,
    'Common Stock': 20_000,
    'Retained Earnings': 4_565,
  },
  total: 30_040,
};
