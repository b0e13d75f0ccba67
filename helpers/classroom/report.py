def page(book):
    yield ""
