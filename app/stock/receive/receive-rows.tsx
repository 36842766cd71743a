'use client'
import { useEffect, useRef } from 'react'
import { rowsOf } from '@/app/_components/form/edit-rows'
import { CheckField, TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { capital, wordsFor } from '@/lib/domain/words'
import styles from '../stock.module.css'
import type { StockKit } from '../tube-schema'

/** Going through a carton by keyboard: Enter makes the next row and goes there. */
export function ReceiveRows({ form, kit }: { form: ActionForm; kit: StockKit }) {
  const count = rowsOf(form.state.values, 'rows').length
  const body = useFocusOnNewRow(count)
  const plate = capital(wordsFor(kit.words).plate)
  return (
    <div className="table-scroll">
      <table className={`sheet ${styles.rows}`}>
        <thead>
          <tr>
            <th>Row</th>
            <th>Mark</th>
            <th>{plate} current, mA</th>
            <th>Transcon&shy;ductance, mA/V</th>
            <th className={styles.second}>{plate} current, section 2, mA</th>
            <th className={styles.second}>Transcon&shy;ductance, section 2, mA/V</th>
            <th>Shorts</th>
            <th>
              <span className="sr-only">Take out</span>
            </th>
          </tr>
        </thead>
        <tbody ref={body}>
          {Array.from({ length: count }, (_, row) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place; the form holds what is in it
            <Row key={row} form={form} row={row} plate={plate} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

function Row({ form, row, plate }: { form: ActionForm; row: number; plate: string }) {
  const cell = (field: string, label: string, numeric = true) => (
    <TextField form={form} name={`rows.${row}.${field}`} label={`${label}, row ${row + 1}`} numeric={numeric} bare />
  )
  return (
    <tr>
      <td className={`num ${styles.place}`}>{row + 1}</td>
      <td>{cell('mark', 'Mark', false)}</td>
      <td>{cell('plateMilliamps', `${plate} current in mA`)}</td>
      <td>{cell('gm', 'Transconductance in mA/V')}</td>
      <td className={styles.second}>{cell('secondPlateMilliamps', `${plate} current of section 2 in mA`)}</td>
      <td className={styles.second}>{cell('secondGm', 'Transconductance of section 2 in mA/V')}</td>
      <td className={styles.short}>
        <CheckField form={form} name={`rows.${row}.shorts`} label="found" />
      </td>
      <td className={styles.out}>
        <button type="submit" className="button plain" formNoValidate name="edit" value={`remove:rows:${row}`}>
          Take out<span className="sr-only"> row {row + 1}</span>
        </button>
      </td>
    </tr>
  )
}

function useFocusOnNewRow(count: number) {
  const body = useRef<HTMLTableSectionElement>(null)
  const before = useRef(count)
  useEffect(() => {
    if (count > before.current) body.current?.rows[count - 1]?.querySelector<HTMLInputElement>('input')?.focus()
    before.current = count
  }, [count])
  return body
}
