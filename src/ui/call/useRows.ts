import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { RowsAnswer } from '../../contract/index.ts';
import { asked, problemOf } from './asked.ts';
import { call } from './call.ts';

export interface RowsQuery {
  readonly find?: string;
  readonly tag?: string;
  readonly stage?: string;
  readonly place?: string;
  readonly client?: string;
  readonly consignment?: string;
  readonly inHouse?: boolean;
  readonly limit?: number;
  readonly after?: string;
}

export const queryText = (query: object): string =>
  new URLSearchParams(
    Object.entries(query)
      .filter(([, value]) => value !== undefined && value !== '' && value !== false)
      .map(([name, value]) => [name, String(value)]),
  ).toString();

/** Rugs that answer to a query; the rows shown stay until the new ones have come. */
export function useRows(query: RowsQuery, isWanted = true) {
  const text = queryText(query);
  const { data, error, isPending, isFetching } = useQuery({
    queryKey: ['rows', text],
    queryFn: () => asked(call<RowsAnswer>(`/api/rugs?${text}`)),
    placeholderData: keepPreviousData,
    enabled: isWanted,
  });
  return { rows: data?.rows ?? [], isLoading: isPending && isWanted, isFetching, problem: problemOf(error) };
}
