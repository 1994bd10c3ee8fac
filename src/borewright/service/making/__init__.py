"""Use cases of what the shop makes itself.

outputs       drawings and papers as files: SVG, DXF, PDF
strip         the paper strip that makes a bore gauge of one mandrel
"""
