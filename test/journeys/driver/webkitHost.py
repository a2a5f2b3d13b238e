#!/usr/bin/python3
"""A bare window around WebKit that a driver may command.

The browsers that come with WebKitGTK forget everything when they end; this one keeps its data in the
folder PHONE_PROFILE, as a phone does.
"""
import os
import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import Gtk, WebKit2  # noqa: E402

folder = os.environ["PHONE_PROFILE"]
width, height = (int(side) for side in os.environ["PHONE_SIZE"].split("x"))
keeping = WebKit2.WebsiteDataManager(
    base_data_directory=os.path.join(folder, "data"),
    base_cache_directory=os.path.join(folder, "cache"),
)
context = WebKit2.WebContext(website_data_manager=keeping)
context.set_automation_allowed(True)


def new_view(_session):
    window = Gtk.Window()
    window.set_default_size(width, height)
    view = WebKit2.WebView(web_context=context, is_controlled_by_automation=True)
    # Without this the session cannot close what it opened.
    view.connect("close", lambda _view: window.destroy())
    window.add(view)
    window.show_all()
    return view


def on_automation(_context, session):
    about = WebKit2.ApplicationInfo()
    about.set_name("phone")
    about.set_version(2, 50, 0)
    session.set_application_info(about)
    session.connect("create-web-view", new_view)


context.connect("automation-started", on_automation)
Gtk.main()
