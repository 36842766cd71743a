/**
 * Puts a picture to a tube, or takes one away. What a file says beside the picture (place, camera, time, texts)
 * is never written to the disk. The file is written before its row is saved: a row never names a picture that is
 * not there.
 */
import { fail, type Result } from '@/lib/domain/result'
import { MOST_PHOTO_BYTES, MOST_PHOTOS, photoFormat, strippedFileName } from '@/lib/domain/stock/photo'
import { strippedPicture } from '@/lib/domain/stock/picture/stripped-picture'
import { inTransaction } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { findTube } from '@/lib/store/tube'
import { createPhoto, deletePhoto, findPhoto, listPhotos, removePicture, writePicture } from '@/lib/store/tube-photo'
import { refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

export type NewPhoto = { readonly tubeId: string; readonly fileName: string; readonly bytes: Uint8Array }

/** Gives the id of the picture. */
export async function addPhoto(step: Step, { tubeId, fileName, bytes }: NewPhoto): Promise<Result<string, StepFault>> {
  const name = strippedFileName(fileName)
  if (bytes.length === 0) return fail({ code: 'photo-empty' })
  if (bytes.length > MOST_PHOTO_BYTES)
    return fail({ code: 'photo-too-big', name, bytes: bytes.length, most: MOST_PHOTO_BYTES })
  const format = photoFormat(bytes)
  if (format === null) return fail({ code: 'photo-no-picture', name })
  const picture = strippedPicture(format, bytes)
  if (picture === null) return fail({ code: 'photo-damaged', name })
  const { actor, now } = step
  return refusing(() =>
    inTransaction(async (tx) => {
      if (!(await findTube(tubeId, tx))) return refuse({ code: 'not-found', what: 'This piece' })
      if ((await listPhotos(tubeId, tx)).length >= MOST_PHOTOS)
        return refuse({ code: 'photos-full', most: MOST_PHOTOS })
      const head = { tubeId, name, format, bytes: picture.length, addedAt: now, addedBy: actor.name }
      const photo = await createPhoto(tx, head)
      await writePicture(photo, picture)
      const changes = [{ label: 'Picture', from: '', to: name }]
      const note = { at: now, person: actor.name, subject: 'tube', subjectId: tubeId } as const
      await writeHistory(tx, { ...note, did: 'Picture put in', changes })
      return photo.id
    }),
  )
}

/** Gives the id of the tube. */
export async function removePhoto({ actor, now }: Step, photoId: string): Promise<Result<string, StepFault>> {
  const removed = await refusing(() =>
    inTransaction(async (tx) => {
      const photo = await findPhoto(photoId, tx)
      if (!photo || !(await deletePhoto(tx, photoId))) return refuse({ code: 'not-found', what: 'This picture' })
      const changes = [{ label: 'Picture', from: photo.name, to: '' }]
      const note = { at: now, person: actor.name, subject: 'tube', subjectId: photo.tubeId } as const
      await writeHistory(tx, { ...note, did: 'Picture deleted', changes })
      return photo
    }),
  )
  if (!removed.ok) return removed
  await removePicture(removed.value)
  return { ok: true, value: removed.value.tubeId }
}
