"""Who asks, with the roles, in one question to the database for each request."""

from django.contrib.auth.backends import ModelBackend
from django.contrib.auth.models import User

from records.models.json_rows import JsonRows


class WithRoles(ModelBackend):
    """Django's own backend; the names of the groups and the entry among the parties ride along with the person."""

    def get_user(self, user_id: int) -> User | None:
        people = User.objects.select_related("party").annotate(role_names=JsonRows("groups__name"))
        user = people.filter(pk=user_id).first()
        return user if user and self.user_can_authenticate(user) else None
