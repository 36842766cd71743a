'use client'
import { HiddenField, SelectField, TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { roleWord, SOCKET_ROLES } from '@/lib/domain/amp/socket'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { Words } from '@/lib/domain/words'
import { OutputValues } from './output-values'
import styles from './sheet.module.css'
import { TypeField } from './type-field'

const ROLE_OPTIONS = SOCKET_ROLES.map((role) => ({ value: role, text: roleWord(role) }))

type SocketBlockProps = { form: ActionForm; index: number; last: boolean; words: Words; catalogue: TubeCatalogue }

export function SocketBlock({ form, index, last, words, catalogue }: SocketBlockProps) {
  const at = `sockets.${index}`
  const position = form.valueOf(`${at}.position`) || `socket ${index + 1}`
  return (
    <fieldset className={styles.socket}>
      <legend>{position}</legend>
      <HiddenField form={form} name={`${at}.id`} />
      <div className={styles.line}>
        <TextField form={form} name={`${at}.position`} label="Position" />
        <SelectField form={form} name={`${at}.role`} label="Role" options={ROLE_OPTIONS} />
        <TypeField form={form} name={`${at}.typeFitted`} words={words} catalogue={catalogue} />
        <TextField form={form} name={`${at}.markFitted`} label="Mark" />
      </div>
      <div className={styles.moves}>
        <Move value={`up:sockets:${index}`} label={`Move ${position} up`} off={index === 0}>
          Up
        </Move>
        <Move value={`down:sockets:${index}`} label={`Move ${position} down`} off={last}>
          Down
        </Move>
        <Move value={`remove:sockets:${index}`} label={`Take out ${position}`}>
          Take out
        </Move>
      </div>
      <OutputValues form={form} at={at} words={words} />
    </fieldset>
  )
}

type MoveProps = { value: string; label: string; off?: boolean; children: React.ReactNode }

const Move = ({ value, label, off, children }: MoveProps) => (
  <button
    type="submit"
    className="button plain"
    formNoValidate
    name="edit"
    value={value}
    aria-label={label}
    disabled={off}
  >
    {children}
  </button>
)
