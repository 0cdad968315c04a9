import { photoPromises } from '../../../test/support/photoPromises.ts';
import { MemoryPhotos } from './memoryPhotos.ts';

photoPromises('the store of photographs in memory', () => ({
  photos: new MemoryPhotos(),
  remove: () => undefined,
}));
