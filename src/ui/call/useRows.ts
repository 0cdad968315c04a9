import { keepPreviousData, useInfiniteQuery } from '@tanstack/react-query';
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
  /** How many at a time; 50 unless told. */
  readonly limit?: number;
}

const queryText = (query: object): string =>
  new URLSearchParams(
    Object.entries(query)
      .filter(([, value]) => value !== undefined && value !== '' && value !== false)
      .map(([name, value]) => [name, String(value)]),
  ).toString();

/**
 * Rugs that answer to a query, the newest first; the rows shown stay until the new ones have come.
 *
 * @param query - what to look for; empty fields ask for nothing
 * @param isWanted - false while there is nothing to look for yet
 */
export function useRows(query: RowsQuery, isWanted = true) {
  const limit = query.limit ?? 50;
  const text = queryText({ ...query, limit });
  const { data, error, isPending, isFetching, hasNextPage, fetchNextPage } = useInfiniteQuery({
    queryKey: ['rows', text],
    queryFn: ({ pageParam }) => {
      const after = pageParam === '' ? '' : `&after=${encodeURIComponent(pageParam)}`;
      return asked(call<RowsAnswer>(`/api/rugs?${text}${after}`));
    },
    initialPageParam: '',
    getNextPageParam: ({ rows }) => (rows.length < limit ? undefined : rows.at(-1)?.stream),
    placeholderData: keepPreviousData,
    enabled: isWanted,
  });
  return {
    rows: data?.pages.flatMap(({ rows }) => rows) ?? [],
    isLoading: isPending && isWanted,
    isFetching,
    hasMore: hasNextPage,
    showMore: () => fetchNextPage(),
    problem: problemOf(error),
  };
}
