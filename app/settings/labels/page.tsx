import type { Metadata } from 'next'
import Link from 'next/link'
import { mayDo } from '@/lib/domain/person/role'
import { requireUser } from '@/lib/session'
import { listLabelSheets } from '@/lib/store/label-sheet'
import { SettingsList } from '../settings-list'

export const metadata: Metadata = { title: 'Labels' }

export default async function LabelSheetsPage() {
  const { actor, shop } = await requireUser()
  const keeper = mayDo(actor, 'keep-shop')
  const sheets = await listLabelSheets(true)
  const list = { actor, shop, section: '/settings/labels' } as const
  return (
    <SettingsList {...list} title="Label sheets" newText="New sizes">
      <thead>
        <tr>
          <th>Name</th>
          <th className="num">Page</th>
          <th className="num">Labels</th>
          <th className="num">Label</th>
          <th>In use</th>
        </tr>
      </thead>
      <tbody>
        {sheets.map((sheet) => (
          <tr key={sheet.id}>
            <td>
              {keeper && sheet.version > 0 ? (
                <Link href={`/settings/labels/${sheet.id}`}>{sheet.name}</Link>
              ) : (
                sheet.name
              )}
            </td>
            <td className="num">
              {sheet.pageWidth} × {sheet.pageHeight} mm
            </td>
            <td className="num">
              {sheet.rows} × {sheet.columns}
            </td>
            <td className="num">
              {sheet.labelWidth} × {sheet.labelHeight} mm
            </td>
            <td>{sheet.version === 0 ? 'yes, comes with the program' : sheet.active ? 'yes' : 'no, retired'}</td>
          </tr>
        ))}
      </tbody>
    </SettingsList>
  )
}
