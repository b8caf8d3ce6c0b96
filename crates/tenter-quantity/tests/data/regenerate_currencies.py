"""Regenerates currencies.csv: the alphabetic codes of ISO 4217 as the pycountry library (Debian's iso-codes) has them.

    python -m venv venv && venv/bin/pip install pycountry==26.2.16
    venv/bin/python regenerate_currencies.py > currencies.csv

Never run by the build: the csv beside this script is committed.
"""
import pycountry

print("code,name")
for currency in sorted(pycountry.currencies, key=lambda currency: currency.alpha_3):
    print(f'{currency.alpha_3},"{currency.name}"')
