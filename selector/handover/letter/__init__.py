"""A letter to the customer: what is proposed, what else there is, what it costs and buys.

`letter.composed` writes it from the advice's own record, `editable` writes and reads its text,
`figures` marks figures that the advice does not hold, `made` sets it as PDF, page or document.
"""
