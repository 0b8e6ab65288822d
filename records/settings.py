"""One settings file. It works with no environment variable set; each one that exists is listed in DEVELOPERS.md."""

import os
import secrets
import tomllib
from pathlib import Path
from urllib.parse import urlsplit

import dj_database_url
import font_source_serif_pro
from csp.constants import NONE, SELF

BASE_DIR = Path(__file__).resolve().parent.parent
DATA_DIR = Path(os.environ.get("REGISTER_DATA") or BASE_DIR / ".data")
DATA_DIR.mkdir(parents=True, exist_ok=True)


def _secret_key() -> str:
    """The key from the environment, else one made once and kept in the data folder."""
    if key := os.environ.get("REGISTER_SECRET_KEY"):
        return key
    path = DATA_DIR / "secret_key"
    if not path.exists():
        descriptor = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
        with os.fdopen(descriptor, "w") as file:
            file.write(secrets.token_urlsafe(64))
    return path.read_text().strip()


SECRET_KEY = _secret_key()
DEBUG = os.environ.get("REGISTER_DEBUG") == "1"
BASE_URL = os.environ.get("REGISTER_BASE_URL", "http://127.0.0.1:8000").rstrip("/")
# The printed codes lead to BASE_URL, so its host is answered without being named again.
_HOSTS = os.environ.get("REGISTER_HOSTS", "127.0.0.1,localhost,[::1]").split(",")
ALLOWED_HOSTS = list(dict.fromkeys(host for host in (*_HOSTS, urlsplit(BASE_URL).hostname) if host))
CSRF_TRUSTED_ORIGINS = [BASE_URL] if BASE_URL.startswith("https://") else []

# What the museum is called and where its clock hangs: from the environment, else from museum.toml in the data folder.
MUSEUM_FILE = DATA_DIR / "museum.toml"
_MUSEUM = tomllib.loads(MUSEUM_FILE.read_text(encoding="utf-8")) if MUSEUM_FILE.exists() else {}
MUSEUM_NAME = os.environ.get("REGISTER_MUSEUM") or _MUSEUM.get("name", "The Museum")
MUSEUM_CODE = os.environ.get("REGISTER_MUSEUM_CODE") or _MUSEUM.get("code", "MUS")
TIME_ZONE = os.environ.get("REGISTER_TIME_ZONE") or _MUSEUM.get("time_zone", "Europe/Berlin")
USE_TZ = True
USE_I18N = False
LANGUAGE_CODE = "en-gb"

INSTALLED_APPS = [
    "django.contrib.auth",
    "django.contrib.contenttypes",
    "django.contrib.sessions",
    "django.contrib.messages",
    "django.forms",
    "whitenoise.runserver_nostatic",
    "django.contrib.staticfiles",
    "django_htmx",
    "simple_history",
    "django_tasks",
    "django_tasks_db",
    "records.apps.RecordsConfig",
    *([] if os.environ.get("REGISTER_RECORDS_ALONE") == "1" else ["process.apps.ProcessConfig"]),
]

MIDDLEWARE = [
    "django.middleware.security.SecurityMiddleware",
    "records.middleware.refuse_nul",
    "csp.middleware.CSPMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "django.contrib.sessions.middleware.SessionMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.contrib.auth.middleware.AuthenticationMiddleware",
    "django.contrib.auth.middleware.LoginRequiredMiddleware",
    "django.contrib.messages.middleware.MessageMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
    "simple_history.middleware.HistoryRequestMiddleware",
]

ROOT_URLCONF = "records.urls"
WSGI_APPLICATION = "records.wsgi.application"
LOGIN_URL = "sign_in"
LOGIN_REDIRECT_URL = "home"
LOGOUT_REDIRECT_URL = "sign_in"

AUTHENTICATION_BACKENDS = ["records.signing_in.WithRoles"]

TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "DIRS": [BASE_DIR / "templates"],
        "APP_DIRS": True,
        "OPTIONS": {
            "context_processors": [
                "django.template.context_processors.request",
                "django.contrib.auth.context_processors.auth",
                "django.contrib.messages.context_processors.messages",
                "records.context.site",
            ],
            "builtins": ["records.templatetags.register"],
        },
    }
]
FORM_RENDERER = "records.forms.rendering.PaperRenderer"

# SQLite: writers wait for each other instead of failing, and a power cut loses nothing (synchronous FULL).
SQLITE_OPTIONS = {
    "transaction_mode": "IMMEDIATE",
    "timeout": 20,
    "init_command": "PRAGMA journal_mode=WAL;PRAGMA synchronous=FULL;PRAGMA foreign_keys=ON;",
}


def _database() -> dict[str, object]:
    if url := os.environ.get("DATABASE_URL"):
        return dict(dj_database_url.parse(url, conn_max_age=600))
    return {
        "ENGINE": "django.db.backends.sqlite3",
        "NAME": DATA_DIR / "register.sqlite3",
        "CONN_MAX_AGE": 600,
        "OPTIONS": SQLITE_OPTIONS,
    }


DATABASES = {"default": _database()}
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"

AUTH_PASSWORD_VALIDATORS = [
    {"NAME": "django.contrib.auth.password_validation.MinimumLengthValidator", "OPTIONS": {"min_length": 10}},
    {"NAME": "django.contrib.auth.password_validation.CommonPasswordValidator"},
]

STATIC_URL = "static/"
# Read from where they lie when the server starts: nothing is to be collected, nothing can be stale.
WHITENOISE_USE_FINDERS = True
# Titles are set in Source Serif; its files are served from the package that brings them.
STATICFILES_DIRS = [("fonts", font_source_serif_pro.font_directory)]
MEDIA_ROOT = DATA_DIR / "files"
STORAGES = {
    "default": {"BACKEND": "django.core.files.storage.FileSystemStorage"},
    "staticfiles": {"BACKEND": "whitenoise.storage.CompressedStaticFilesStorage"},
}
DOCUMENTS_DIR = DATA_DIR / "papers"
PRINTING_DIR = DATA_DIR / "printing"  # sheets of tags, for a day

# A photograph is read in one request; a TIFF of 30 megapixels and 16 bits has 180 MB. The check comes before decoding.
UPLOAD_LIMIT_BYTES = int(
    float(os.environ.get("REGISTER_PHOTO_LIMIT_MB") or _MUSEUM.get("photo_limit_mb", 200)) * 1024 * 1024
)
# A logger's trace: five million samples have about 250 MB.
TRACE_LIMIT_BYTES = int(
    float(os.environ.get("REGISTER_TRACE_LIMIT_MB") or _MUSEUM.get("trace_limit_mb", 300)) * 1_000_000
)
# Smaller ones are read while their person waits (about a second at most); larger ones by the worker.
TRACE_AT_ONCE_BYTES = SCAN_AT_ONCE_BYTES = 4_000_000
DATA_UPLOAD_MAX_MEMORY_SIZE = 4 * 1024 * 1024
FILE_UPLOAD_MAX_MEMORY_SIZE = 2 * 1024 * 1024

CONTENT_SECURITY_POLICY = {
    "DIRECTIVES": {
        "default-src": [SELF],
        "img-src": [SELF, "data:"],
        "object-src": [NONE],
        "base-uri": [SELF],
        "form-action": [SELF],
        "frame-ancestors": [NONE],
    }
}
X_FRAME_OPTIONS = "DENY"
SECURE_CONTENT_TYPE_NOSNIFF = True
SECURE_REFERRER_POLICY = "same-origin"
SESSION_COOKIE_HTTPONLY = True
SESSION_COOKIE_AGE = 60 * 60 * 12

# Behind https (REGISTER_BASE_URL says so) cookies and transport are strict; a bench tablet on plain http still works.
_HTTPS = BASE_URL.startswith("https://")
SESSION_COOKIE_SECURE = CSRF_COOKIE_SECURE = _HTTPS
SECURE_SSL_REDIRECT = _HTTPS and os.environ.get("REGISTER_SSL_REDIRECT", "1") == "1"
SECURE_HSTS_SECONDS = 31536000 if _HTTPS else 0
SECURE_HSTS_INCLUDE_SUBDOMAINS = SECURE_HSTS_PRELOAD = _HTTPS
if _HTTPS:
    SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https")

# Long work lies in the database and is done by “manage.py work”, which serve starts beside itself.
TASKS = {"default": {"BACKEND": "django_tasks_db.DatabaseBackend"}}

HTMX = {"config": {"includeIndicatorStyles": False, "allowEval": False}}

LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "handlers": {"console": {"class": "logging.StreamHandler"}},
    "root": {"handlers": ["console"], "level": "WARNING"},
}
