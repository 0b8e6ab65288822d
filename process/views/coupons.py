"""Coupons of a shell and how they bent."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from process.forms.coupons import CouponForm
from process.models import CouponTest, Shell
from records import access
from records.views.answering import answer_form

SENTENCE = "A strip of the flange, bent to and fro until it breaks: the best evidence of what the wall is like inside."


def coupon_add(request: HttpRequest, number: str) -> HttpResponse:
    shell = access.fetch(request, Shell.objects.select_related("item", "cathode__run"), item__number=number)
    access.require(request, "write", CouponTest)
    form = CouponForm(request.POST or None, instance=CouponTest(shell=shell), user=request.user)
    return answer_form(
        request, form, title=f"Coupon of {number}", number=number, verb="Keep", sentence=SENTENCE,
        then=CouponTest.get_absolute_url, back_url=shell.get_absolute_url(),
    )  # fmt: skip


def coupon_edit(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(
        request, CouponTest.objects.select_related("shell__item", "shell__cathode__run"), to="write", pk=pk
    )
    form = CouponForm(request.POST or None, instance=row)
    return answer_form(
        request, form, title=f"Coupon {row.number}", number=row.shell.item.number, verb="Keep", sentence=SENTENCE,
        then=CouponTest.get_absolute_url, back_url=row.shell.get_absolute_url(),
    )  # fmt: skip


urls = [
    path("shells/<str:number>/coupons/new/", coupon_add, name="coupon_add"),
    path("coupons/<int:pk>/edit/", coupon_edit, name="coupon_edit"),
]
