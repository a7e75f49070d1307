import JSZip from 'jszip';

/** One thing a file says: in which part, at which place of its tree, and what. */
export interface Said {
  readonly part: string;
  readonly place: string;
  readonly text: string;
}

/**
 * Everything an xlsx file says: each attribute and each text of each part, whatever the part is for (cells, shared
 * texts, comments, names, properties, charts and their caches, headers, hidden sheets, relationships), the names of
 * the parts, and the bytes of parts that are no XML.
 * @source ECMA-376, part 2: a file is a zip archive of parts.
 */
export async function everythingSaid(file: Uint8Array): Promise<Said[]> {
  const zip = await JSZip.loadAsync(file);
  const said: Said[] = [];
  for (const [part, entry] of Object.entries(zip.files)) {
    said.push(
      { part, place: 'name', text: part },
      { part, place: 'comment', text: [entry.comment].join('') },
    );
    const text = entry.dir ? '' : await entry.async('string');
    said.push(...(text.includes('<') ? saidInXml(part, text) : [{ part, place: 'bytes', text }]));
  }
  return said;
}

/** The attributes and texts of an XML part, each under the path of its element, elements of a name counted. */
function saidInXml(part: string, xml: string): Said[] {
  const said: Said[] = [];
  const open: { path: string; counts: Map<string, number> }[] = [{ path: '', counts: new Map() }];
  let texts = 0;
  for (const [token] of xml.matchAll(/<[^>]+>|[^<]+/g)) {
    const here = open.at(-1);
    if (here === undefined) throw new Error(`${part} closes more than it opens`);
    if (!token.startsWith('<')) said.push({ part, place: `${here.path}#${texts++}`, text: plain(token) });
    else if (token.startsWith('<?') || token.startsWith('<!'))
      said.push({ part, place: 'head', text: token });
    else if (token.startsWith('</')) open.pop();
    else {
      const name = /^<([^\s/>]+)/.exec(token)?.[1] ?? '';
      const count = here.counts.get(name) ?? 0;
      here.counts.set(name, count + 1);
      const path = `${here.path}/${name}[${count}]`;
      for (const [, key, value] of token.matchAll(/([\w:.-]+)="([^"]*)"/g))
        said.push({ part, place: `${path}@${key ?? ''}`, text: plain(value ?? '') });
      if (!token.endsWith('/>')) open.push({ path, counts: new Map() });
    }
  }
  return said;
}

function plain(text: string): string {
  return text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&apos;', "'")
    .replaceAll('&amp;', '&');
}

/**
 * What a file says of its project: everything but what the writer puts at the same place of any file of that shape.
 * @param control a file of the same shape by the same writer, with everything of the project replaced.
 */
export function saidOfProject(said: readonly Said[], control: readonly Said[]): Said[] {
  const writers = new Map(control.map(one => [`${one.part} ${one.place}`, one.text]));
  return said.filter(one => one.text !== '' && writers.get(`${one.part} ${one.place}`) !== one.text);
}
