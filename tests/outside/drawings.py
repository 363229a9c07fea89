"""What the libraries ezdxf and pypdf read in drawings.

Arguments: files that end in .dxf or .pdf. Prints a line for each file and each thing in it, its fields apart by tabs.
Leaves with 3 when a library is not there.
"""

import sys

try:
    import ezdxf
    import pypdf
except ImportError as missing:
    print(missing)
    sys.exit(3)


def show(*fields):
    print(*fields, sep="\t")


for path in sys.argv[1:]:
    show("file", path)
    if path.endswith(".dxf"):
        # readfile is the strict way in: it raises on anything it would have to mend.
        drawing = ezdxf.readfile(path)
        audit = drawing.audit()
        show("audit", drawing.dxfversion, len(audit.errors), len(audit.fixes))
        space = drawing.modelspace()
        for circle in space.query("CIRCLE"):
            centre = circle.dxf.center
            show("circle", circle.dxf.layer, centre.x, centre.y, circle.dxf.radius)
        for outline in space.query("POLYLINE"):
            corners = [(corner.x, corner.y) for corner in outline.points()]
            show("outline", outline.is_closed, *(number for corner in corners for number in corner))
        for text in space.query("TEXT"):
            show("text", text.dxf.text)
    else:
        reader = pypdf.PdfReader(path, strict=True)
        for page in reader.pages:
            box = page.mediabox
            show("page", float(box.width), float(box.height))
            show("words", " ".join(page.extract_text().split()))
