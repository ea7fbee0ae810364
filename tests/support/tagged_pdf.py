"""Reads a tagged PDF back: pages as runs of text with tag, place and colour; the structure tree.

Written against ISO 32000-1 (content streams §7.8, text §9, marked content §14.6, structure §14.7)
and independent of the program under test. `qpdf --json` opens the file; the rest is here.
"""

import base64
import json
import re
import subprocess
from dataclasses import dataclass, field, replace

# structure types that run on within a line (ISO 32000-1 §14.8.4.4)
INLINE = {"Span", "Quote", "Reference", "Code", "Link", "Annot", "Em", "Strong", "BibEntry", "Lbl"}

IDENTITY = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


def multiply(m, n):
    """The matrix that applies `m` first, then `n` (ISO 32000-1 §8.3.4)."""
    return (
        m[0] * n[0] + m[1] * n[2], m[0] * n[1] + m[1] * n[3],
        m[2] * n[0] + m[3] * n[2], m[2] * n[1] + m[3] * n[3],
        m[4] * n[0] + m[5] * n[2] + n[4], m[4] * n[1] + m[5] * n[3] + n[5],
    )  # fmt: skip


@dataclass
class Run:
    """A piece of text shown by one operator. x, y, size in points; colour as sRGB 0..1."""

    text: str
    x: float
    y: float
    size: float
    colour: tuple
    ground: tuple
    mcid: int | None
    artifact: bool
    font: str


@dataclass
class Image:
    """A picture drawn. x, y, width, height in points from the lower left; `name` of its XObject."""

    x: float
    y: float
    width: float
    height: float
    mcid: int | None
    artifact: bool
    reference: str


@dataclass
class Page:
    number: int
    width: float
    height: float
    runs: list = field(default_factory=list)
    images: list = field(default_factory=list)
    untagged: list = field(default_factory=list)
    lines_drawn: int = 0

    def text_of(self, mcid):
        return join([run for run in self.runs if run.mcid == mcid])


@dataclass
class Element:
    """A structure element. `kids` are Elements, or (page number, mcid), or ("OBJR", reference)."""

    type: str
    attributes: dict
    kids: list = field(default_factory=list)

    def walk(self):
        yield self
        for kid in self.kids:
            if isinstance(kid, Element):
                yield from kid.walk()

    def content(self):
        """(page number, mcid) pairs below this element, in reading order."""
        for kid in self.kids:
            if isinstance(kid, Element):
                yield from kid.content()
            elif kid[0] != "OBJR":
                yield kid


def join(runs):
    """The text of runs as a reader takes it: a change of line is a space, but after a hyphen (a space that ended the
    line still stands before the change)."""
    out = ""
    last = None
    for run in runs:
        moved = last is not None and (abs(run.y - last.y) > 0.5 or run.x < last.x)
        if moved and out and not (out[-1].isspace() or out[-1] == "-") and not run.text[:1].isspace():
            out += " "
        out += run.text
        last = run
    return re.sub(r"\s+", " ", out).strip()


class TaggedPdf:
    """pages: list of Page; tree: the Document element; title, language, outline, attachments."""

    def __init__(self, path):
        listed = subprocess.run(
            ["qpdf", "--json=2", "--json-stream-data=inline", "--decode-level=generalized", path],
            check=True, capture_output=True,
        )  # fmt: skip
        self.objects = json.loads(listed.stdout)["qpdf"][1]
        self.path = str(path)
        self.trailer = self.objects["trailer"]["value"]
        self.catalog = self.get(self.trailer["/Root"])
        self.font_maps = {}
        self.page_numbers = {}
        self.pages = []
        for reference in self.page_references(self.catalog["/Pages"], {}):
            self.page_numbers[reference[0]] = len(self.pages) + 1
            self.pages.append(self.read_page(*reference))
        root = self.get(self.catalog.get("/StructTreeRoot")) or {}
        self.role_map = self.get(root.get("/RoleMap")) or {}
        self.tree = Element("Root", {}, list(self.read_kids(root.get("/K"), None)))

    # ---- objects ---------------------------------------------------------------------------

    def get(self, value):
        """The object behind a reference (a stream's dictionary), or the value itself."""
        while isinstance(value, str) and re.fullmatch(r"\d+ \d+ R", value):
            entry = self.objects.get("obj:" + value, {})
            value = entry["stream"]["dict"] if "stream" in entry else entry.get("value")
        return value

    def stream(self, reference):
        return base64.b64decode(self.objects["obj:" + reference]["stream"]["data"])

    @staticmethod
    def string(value):
        """A PDF text string as qpdf writes it in JSON, as Python text."""
        if value is None:
            return None
        if value.startswith("u:"):
            return value[2:]
        if value.startswith("b:"):
            return bytes.fromhex(value[2:]).decode("latin-1")
        return value

    def page_references(self, reference, inherited):
        node = self.get(reference)
        inherited = {**inherited, **{k: node[k] for k in ("/MediaBox", "/Resources") if k in node}}
        if "/Kids" in node:
            for kid in self.get(node["/Kids"]):
                yield from self.page_references(kid, inherited)
        else:
            yield reference, {**inherited, **node}

    # ---- structure -------------------------------------------------------------------------

    def read_kids(self, kids, page):
        kids = self.get(kids) if isinstance(self.get(kids), list) else kids
        for kid in kids if isinstance(kids, list) else [kids]:
            if kid is None:
                continue
            if isinstance(kid, int):
                yield (page, kid)
                continue
            node = self.get(kid)
            here = self.page_numbers.get(node.get("/Pg"), page)
            if node.get("/Type") == "/MCR":
                yield (here, node["/MCID"])
            elif node.get("/Type") == "/OBJR":
                yield ("OBJR", node["/Obj"])
            else:
                kind = node["/S"].lstrip("/")
                kind = str(self.role_map.get("/" + kind, kind)).lstrip("/")
                yield Element(kind, node, list(self.read_kids(node.get("/K"), here)))

    def text(self, element):
        """The text of an element in reading order; its replacement text if it has one."""
        parts, runs = [], []
        for run in self.runs_of(element):
            if run is None:
                parts.append(join(runs))
                runs = []
            else:
                runs.append(run)
        parts.append(join(runs))
        return " ".join(part for part in parts if part)

    def runs_of(self, element):
        """Runs below an element in reading order, None where a block begins or ends."""
        runs = []
        block = element.type not in INLINE
        for kid in element.kids:
            if isinstance(kid, Element):
                runs += self.runs_of(kid)
            elif kid[0] != "OBJR":
                runs += [run for run in self.pages[kid[0] - 1].runs if run.mcid == kid[1]]
        if "/ActualText" in element.attributes:
            said = self.string(element.attributes["/ActualText"])
            first = next((run for run in runs if run), Run(said, 0, 0, 0, (), (), None, False, ""))
            runs = [replace(first, text=said)]
        return [None, *runs, None] if block else runs

    def alternative(self, element):
        return self.string(element.attributes.get("/Alt"))

    def attribute(self, element, name):
        """An entry of the element's attribute objects (ISO 32000-1 §14.8.5), or None."""
        values = self.get(element.attributes.get("/A"))
        for value in values if isinstance(values, list) else [values]:
            value = self.get(value)
            if isinstance(value, dict) and "/" + name in value:
                return value["/" + name]
        return None

    def outline(self):
        """Titles of the bookmarks, depth first."""

        def walk(reference):
            while reference:
                item = self.get(reference)
                yield self.string(item["/Title"])
                yield from walk(item.get("/First"))
                reference = item.get("/Next")

        return list(walk((self.get(self.catalog.get("/Outlines")) or {}).get("/First")))

    def attachments(self):
        """{file name: bytes} of the embedded files."""
        names = self.get((self.get(self.catalog.get("/Names")) or {}).get("/EmbeddedFiles")) or {}
        found = {}
        pairs = self.get(names.get("/Names")) or []
        for specification in pairs[1::2]:
            specification = self.get(specification)
            file = self.get(specification["/EF"])["/F"]
            found[self.string(specification["/UF"])] = self.stream(file)
        return found

    # ---- pages -----------------------------------------------------------------------------

    def read_page(self, _reference, node):
        box = self.get(node["/MediaBox"])
        page = Page(len(self.pages) + 1, float(box[2] - box[0]), float(box[3] - box[1]))
        contents = node.get("/Contents")
        if not isinstance(self.get(contents), list):
            contents = [contents]
        else:
            contents = self.get(contents)
        data = b"\n".join(self.stream(part) for part in contents)
        Interpreter(self, page, self.get(node["/Resources"])).run(data)
        return page

    def font(self, reference):
        """(name, {code: text}) of a font."""
        if reference not in self.font_maps:
            node = self.get(reference)
            mapping = {}
            if "/ToUnicode" in node:
                mapping = read_to_unicode(self.stream(node["/ToUnicode"]).decode("latin-1"))
            self.font_maps[reference] = (node.get("/BaseFont", "/?")[1:], mapping)
        return self.font_maps[reference]


def read_to_unicode(cmap):
    """{code: text} from bfchar and bfrange sections."""

    def text(digits):
        return bytes.fromhex(digits).decode("utf-16-be", "replace")

    mapping = {}
    for body in re.findall(r"beginbfchar(.*?)endbfchar", cmap, re.DOTALL):
        for code, to in re.findall(r"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]*)>", body):
            mapping[int(code, 16)] = text(to)
    pattern = r"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*(<[0-9A-Fa-f]+>|\[[^\]]*\])"
    for body in re.findall(r"beginbfrange(.*?)endbfrange", cmap, re.DOTALL):
        for first, last, to in re.findall(pattern, body):
            codes = range(int(first, 16), int(last, 16) + 1)
            if to[0] == "[":
                for code, one in zip(codes, re.findall(r"<([0-9A-Fa-f]+)>", to)):
                    mapping[code] = text(one)
            else:
                for code in codes:
                    start = int(to[1:-1], 16) + code - codes[0]
                    mapping[code] = text(f"{start:0{len(to) - 2}x}")
    return mapping


TOKEN = re.compile(
    rb"""\s*(?:%[^\r\n]*\s*)*(?:
      (?P<dict_open><<) | (?P<dict_close>>>) | (?P<open>\[) | (?P<close>\])
    | (?P<hex><[0-9A-Fa-f\s]*>)
    | (?P<number>[+-]?(?:\d+\.?\d*|\.\d+)(?![\w*'"]))
    | (?P<name>/[^\s/<>\[\]()%]*)
    | (?P<string>\()
    | (?P<operator>[A-Za-z'"*][\w*'"]*)
    )""",
    re.VERBOSE,
)


def read_string(data, at):
    """A literal string whose opening bracket is just before `at`: (bytes, where it ends)."""
    out, depth = bytearray(), 1
    escapes = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f"}
    while depth:
        c = data[at : at + 1]
        at += 1
        if c == b"\\":
            octal = re.compile(rb"[0-7]{1,3}").match(data, at)
            if octal:
                out.append(int(octal.group(), 8) & 255)
                at = octal.end()
            else:
                out += escapes.get(data[at : at + 1], data[at : at + 1])
                at += 1
            continue
        depth += {b"(": 1, b")": -1}.get(c, 0)
        if depth:
            out += c
    return bytes(out), at


def operations(data):
    """(operator, operands) of a content stream. Strings are bytes, names are str with a slash."""
    stack, operands, at = [], [], 0
    while True:
        match = TOKEN.match(data, at)
        if not match:
            if data[at:].strip():
                raise ValueError(f"not a content stream at {data[at:at + 40]!r}")
            return
        at, kind, token = match.end(), match.lastgroup, match.group(match.lastgroup)
        if kind in {"open", "dict_open"}:
            stack.append(operands)
            operands = []
        elif kind in {"close", "dict_close"}:
            whole = operands
            if kind == "dict_close":
                whole = dict(zip(operands[::2], operands[1::2]))
            operands = stack.pop()
            operands.append(whole)
        elif kind == "operator" and token in {b"true", b"false", b"null"}:
            operands.append({b"true": True, b"false": False, b"null": None}[token])
        elif kind == "operator":
            yield token.decode(), operands
            operands = []
        elif kind == "number":
            operands.append(float(token) if b"." in token else int(token))
        elif kind == "name":
            operands.append(token.decode())
        elif kind == "hex":
            digits = re.sub(rb"\s", b"", token[1:-1])
            operands.append(bytes.fromhex((digits + b"0" * (len(digits) % 2)).decode()))
        else:
            text, at = read_string(data, at)
            operands.append(text)


def decode_text_string(raw):
    if raw.startswith(b"\xfe\xff"):
        return raw[2:].decode("utf-16-be")
    return raw.decode("latin-1")


class Interpreter:
    """Follows the operators that place text and pictures; everything else only counts as drawn."""

    PAINTING = {"f", "F", "f*", "S", "s", "B", "B*", "b", "b*", "sh"}

    def __init__(self, pdf, page, resources):
        self.pdf, self.page, self.resources = pdf, page, resources
        self.ctm, self.fill, self.saved = IDENTITY, (0.0, 0.0, 0.0), []
        self.text_matrix = self.line_matrix = IDENTITY
        self.font, self.size, self.leading = ("?", {}), 0.0, 0.0
        self.marks = []
        self.rectangles, self.pending = [], []

    def run(self, data):
        for operator, operands in operations(data):
            name = "do_" + {"'": "quote", '"': "quotes"}.get(operator, operator.replace("*", "star"))
            if hasattr(self, name):
                getattr(self, name)(*operands)
            if operator in self.PAINTING:
                self.paint(operator)
            elif operator == "n":
                self.pending = []

    # marked content
    def mcid(self):
        return next((m["mcid"] for m in reversed(self.marks) if m["mcid"] is not None), None)

    def artifact(self):
        return any(mark["tag"] == "/Artifact" for mark in self.marks)

    def do_BMC(self, tag):
        self.marks.append({"tag": tag, "mcid": None, "actual": None})

    def do_BDC(self, tag, properties):
        if isinstance(properties, str):
            properties = self.pdf.get(self.pdf.get(self.resources["/Properties"])[properties])
        actual = properties.get("/ActualText")
        if isinstance(actual, bytes):
            actual = decode_text_string(actual)
        elif isinstance(actual, str):
            actual = self.pdf.string(actual)
        self.marks.append({"tag": tag, "mcid": properties.get("/MCID"), "actual": actual})

    def do_EMC(self):
        mark = self.marks.pop()
        if mark["actual"] and not mark.get("said"):
            # nothing was shown under the replacement text: it still speaks
            self.add_run(mark["actual"])

    # graphics state
    def do_q(self):
        self.saved.append((self.ctm, self.fill, self.font, self.size, self.leading))

    def do_Q(self):
        self.ctm, self.fill, self.font, self.size, self.leading = self.saved.pop()

    def do_cm(self, *matrix):
        self.ctm = multiply(matrix, self.ctm)

    def do_g(self, grey):
        self.fill = (grey, grey, grey)

    def do_rg(self, *colour):
        self.fill = colour

    def do_k(self, c, m, y, k):
        self.fill = tuple((1 - v) * (1 - k) for v in (c, m, y))

    def do_sc(self, *values):
        values = [v for v in values if not isinstance(v, str)]
        if len(values) == 1:
            self.do_g(*values)
        elif len(values) == 3:
            self.do_rg(*values)
        elif len(values) == 4:
            self.do_k(*values)

    do_scn = do_sc

    # paths: only rectangles matter, as the ground that text may stand on
    def do_re(self, x, y, width, height):
        corners = [self.place(multiply((1, 0, 0, 1, px, py), self.ctm))
                   for px, py in ((x, y), (x + width, y + height))]  # fmt: skip
        (ax, ay), (bx, by) = corners
        self.pending.append((min(ax, bx), min(ay, by), max(ax, bx), max(ay, by)))

    def paint(self, operator):
        self.page.lines_drawn += 1
        if operator[0] in "fFBb":
            self.rectangles += [(box, self.fill) for box in self.pending]
        self.pending = []
        self.note_untagged(f"path painted by {operator}")

    def note_untagged(self, what):
        if self.mcid() is None and not self.artifact():
            self.page.untagged.append(what)

    @staticmethod
    def place(matrix):
        return matrix[4], matrix[5]

    def ground_at(self, x, y):
        ground = (1.0, 1.0, 1.0)
        for (left, low, right, high), colour in self.rectangles:
            if left <= x <= right and low <= y <= high:
                ground = colour
        return ground

    def do_Do(self, name):
        reference = self.pdf.get(self.resources["/XObject"])[name]
        node = self.pdf.get(reference)
        self.note_untagged(f"XObject {name}")
        if node.get("/Subtype") == "/Image":
            a, b, c, d, e, f = self.ctm
            xs, ys = (e, e + a, e + c, e + a + c), (f, f + b, f + d, f + b + d)
            self.page.images.append(
                Image(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys),
                      self.mcid(), self.artifact(), reference)
            )  # fmt: skip
        else:
            inner = Interpreter(self.pdf, self.page, self.pdf.get(node.get("/Resources", {})))
            inner.ctm = multiply(node.get("/Matrix", IDENTITY), self.ctm)
            inner.fill, inner.marks = self.fill, list(self.marks)
            inner.run(self.pdf.stream(reference))

    # text
    def do_BT(self):
        self.text_matrix = self.line_matrix = IDENTITY

    def do_Tf(self, name, size):
        self.font = self.pdf.font(self.pdf.get(self.resources["/Font"])[name])
        self.size = size

    def do_TL(self, leading):
        self.leading = leading

    def do_Tm(self, *matrix):
        self.text_matrix = self.line_matrix = matrix

    def do_Td(self, x, y):
        self.line_matrix = multiply((1, 0, 0, 1, x, y), self.line_matrix)
        self.text_matrix = self.line_matrix

    def do_TD(self, x, y):
        self.leading = -y
        self.do_Td(x, y)

    def do_Tstar(self):
        self.do_Td(0, -self.leading)

    def do_quote(self, raw):
        self.do_Tstar()
        self.do_Tj(raw)

    def do_Tj(self, raw):
        self.show([raw])

    def do_TJ(self, parts):
        self.show([part for part in parts if isinstance(part, bytes)])

    def show(self, strings):
        name, mapping = self.font
        text = ""
        for raw in strings:
            for i in range(0, len(raw) - 1, 2):
                code = raw[i] * 256 + raw[i + 1]
                text += mapping.get(code, "\ufffd")
        actual = next((m for m in reversed(self.marks) if m["actual"] is not None), None)
        if actual:
            text = "" if actual.get("said") else actual["actual"]
            actual["said"] = True
        self.add_run(text)

    def add_run(self, text):
        x, y = self.place(multiply(self.text_matrix, self.ctm))
        matrix = multiply(self.text_matrix, self.ctm)
        size = self.size * (matrix[2] ** 2 + matrix[3] ** 2) ** 0.5
        self.note_untagged(f"text {text!r}")
        self.page.runs.append(
            Run(text, x, y, size, self.fill, self.ground_at(x + size * 0.2, y + size * 0.2),
                self.mcid(), self.artifact(), self.font[0])
        )  # fmt: skip
