import type { DrawingRequest } from '../worker/layout-api.ts';
import type { RemoteModel } from '../worker/remote.ts';

/** Saves the layout as a file that prints at 1 : 5. */
export async function saveSvg(
  model: RemoteModel,
  request: Pick<DrawingRequest, 'armAngle' | 'projection'>,
  name: string,
): Promise<void> {
  const svg = await model.drawingFile(request.armAngle, request.projection);
  const url = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = `${name} layout.svg`;
  link.click();
  URL.revokeObjectURL(url);
}
