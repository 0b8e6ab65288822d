"""What is refused before any page is asked for it."""

from collections.abc import Callable

from django.core.exceptions import BadRequest
from django.http import HttpRequest, HttpResponse


def refuse_nul(get_response: Callable[[HttpRequest], HttpResponse]) -> Callable[[HttpRequest], HttpResponse]:
    """No address here holds the character NUL, and PostgreSQL takes it as an error; in forms Django refuses it."""

    def answer(request: HttpRequest) -> HttpResponse:
        if "\0" in request.path or "%00" in request.META.get("QUERY_STRING", ""):
            raise BadRequest("This address holds a character that no address of the register has.")
        return get_response(request)

    return answer
