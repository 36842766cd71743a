/** Pictures of the tube: seen, put in and deleted by plain forms. */
import { ActForm } from '@/app/_components/form/act-form'
import { MOST_PHOTO_BYTES, MOST_PHOTOS, type TubePhoto } from '@/lib/domain/stock/photo'
import styles from '../stock.module.css'
import { submitPhotoRemoval } from './actions'

type Props = { readonly tubeId: string; readonly photos: readonly TubePhoto[]; readonly fault: string }

export function TubePhotos({ tubeId, photos, fault }: Props) {
  return (
    <section className="panel stack" id="photos">
      <h2>Pictures</h2>
      {photos.length === 0 && <p className="soft">None yet.</p>}
      {photos.length > 0 && (
        <ul className={styles.photos}>
          {photos.map((photo) => (
            <li key={photo.id}>
              <a href={`/api/stock/photos/${photo.id}`}>
                {/* biome-ignore lint/performance/noImgElement: served by this shop to those signed in, at its own size */}
                <img src={`/api/stock/photos/${photo.id}`} alt={photo.name} loading="lazy" />
              </a>
              <span className="small soft">{photo.name}</span>
              <ActForm
                action={submitPhotoRemoval}
                values={{ photoId: photo.id }}
                quiet
                fold={{ summary: 'Delete', note: 'The picture is gone then.' }}
              >
                Delete this picture
              </ActForm>
            </li>
          ))}
        </ul>
      )}
      {photos.length < MOST_PHOTOS && (
        <form action="/api/stock/photos" method="post" encType="multipart/form-data" className="stack no-print">
          {fault && (
            <p className="form-message" data-status="refused" role="alert">
              {fault}
            </p>
          )}
          <input type="hidden" name="tubeId" value={tubeId} />
          <div className="field">
            <label htmlFor="photo">Picture</label>
            <input id="photo" name="photo" type="file" accept="image/jpeg,image/png,image/webp" required />
            <p className="field-hint">
              JPEG, PNG or WebP, at most {MOST_PHOTO_BYTES / 1e6} MB. Place, camera and time are taken out of it.
            </p>
          </div>
          <div className="row">
            <button type="submit" className="button quiet">
              Put the picture in
            </button>
          </div>
        </form>
      )}
    </section>
  )
}
