import { useQuery } from '@tanstack/react-query';
import { type PictureForm, pictureAddress } from '../kit/Picture.tsx';

const fetched = async (photo: string, form: PictureForm): Promise<Blob> => {
  const answer = await fetch(pictureAddress(photo, form));
  if (!answer.ok) throw new Error(`photograph answered with ${answer.status}`);
  return answer.blob();
};

/** Few browsers open the files of some telephones; the server's own copy serves then. */
const originalOf = async (photo: string): Promise<Blob> => {
  const original = await fetched(photo, 'original');
  return /hei[cf]/.test(original.type) ? fetched(photo, 'shown') : original;
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
