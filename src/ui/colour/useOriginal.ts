import { useQuery } from '@tanstack/react-query';
import { pictureAddress } from '../kit/Picture.tsx';

const originalOf = async (photo: string): Promise<Blob> => {
  const answer = await fetch(pictureAddress(photo, 'original'));
  if (!answer.ok) throw new Error(`photograph answered with ${answer.status}`);
  return answer.blob();
};

/** The original of a recorded photograph, fetched to be measured on this device. */
export function useOriginal(photo: string | null) {
  const { data, error, isFetching } = useQuery({
    queryKey: ['original', photo],
    queryFn: () => (photo === null ? null : originalOf(photo)),
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 60_000,
  });
  return { blob: data ?? null, isFailed: error !== null, isFetching };
}
