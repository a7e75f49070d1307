import type { Locator, Page } from 'playwright-core';

/** One input of the window: the view and face where it stands, its place in the document, and its kind. */
export interface Input {
  readonly view: string;
  readonly face: string;
  readonly at: string;
  readonly kind: string;
}

export function cellOf(page: Page, at: string): Locator {
  return page.locator(`[data-edit="${at.replaceAll('"', '\\"')}"]`).first();
}

/** What an input shows now, whether it is a cell or a field. */
export async function shownIn(page: Page, at: string): Promise<string> {
  return cellOf(page, at).evaluate(element =>
    element instanceof HTMLInputElement || element instanceof HTMLSelectElement
      ? element.value
      : element.textContent.trim(),
  );
}

/** The inputs of the face that is open, the first of each kind that is not among those found before. */
export async function inputsHere(
  page: Page,
  known: ReadonlySet<string>,
): Promise<readonly { at: string; kind: string }[]> {
  const all = await page.locator('.surface [data-edit][data-kind]').evaluateAll(found =>
    found.map(one => ({
      at: one.getAttribute('data-edit') ?? '',
      kind: one.getAttribute('data-kind') ?? '',
    })),
  );
  const kinds = new Set(known);
  return all.filter(one => {
    if (kinds.has(one.kind)) return false;
    kinds.add(one.kind);
    return true;
  });
}

/** Another value of the same kind as the one shown. */
function another(kind: string, before: string): string {
  if (kind === 'date') return before === '2027-08-16' ? '2027-08-17' : '2027-08-16';
  if (kind === 'text') return `${before.replace('–', '')} again`.trim();
  const number = Number(before.replaceAll(',', '').replace('\u2212', '-'));
  if (kind === 'whole') return String(Number.isFinite(number) ? number + 1 : 2);
  if (!Number.isFinite(number) || before === '') return '12';
  return number > 0 && number <= 1 ? '0.9' : String(Math.round(number * 1.1 * 100) / 100);
}

/** Changes an input as a person does: opens it, types or chooses another value, presses Enter. */
export async function changeInput(page: Page, { at, kind }: Pick<Input, 'at' | 'kind'>): Promise<void> {
  const cell = cellOf(page, at);
  const before = await shownIn(page, at);
  const tag = await cell.evaluate(element => element.tagName);
  if (tag === 'SELECT') {
    await chooseOther(cell);
    return;
  }
  if (tag === 'INPUT') {
    await cell.fill(another(kind, before));
    await cell.press('Enter');
    return;
  }
  await cell.scrollIntoViewIfNeeded();
  await cell.click();
  const editor = page.locator('.cell-input');
  await editor.waitFor({ timeout: 5000 });
  if ((await editor.evaluate(element => element.tagName)) === 'SELECT') await chooseOther(editor);
  else {
    const typed = await editor.inputValue();
    await editor.fill(another(kind, typed));
    await editor.press('Enter');
  }
}

async function chooseOther(list: Locator): Promise<void> {
  const other = await list.evaluate(element =>
    element instanceof HTMLSelectElement
      ? [...element.options]
          .map(option => option.value)
          .find(value => value !== element.value && value !== '')
      : undefined,
  );
  if (other !== undefined) await list.selectOption(other);
}
