"""What a screen may ask of the application that it stands in."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from typing import TYPE_CHECKING, Any, Protocol

from booth.clock import Clock

if TYPE_CHECKING:
    from booth.files.faults import Fault
    from booth.files.places import Places
    from booth.log.open_jobs import OpenJobs
    from booth.log.session import Session
    from booth.screens.base import OwnScreen
    from booth.shop.model import Shop
    from booth.units import System


class Alarms(Protocol):
    """What rings, in all open jobs."""

    def mind(self) -> None:
        """Show and sound what rings now."""


class Preferences(Protocol):
    """What is remembered from one start to the next."""

    @property
    def hints(self) -> bool:
        """Whether it is shown how each step is done."""


class Host(Protocol):
    """What a screen may ask of the application."""

    clock: Clock
    places: Places
    system: System

    @property
    def preferences(self) -> Preferences:
        """What is remembered from one start to the next."""

    @property
    def shop(self) -> Shop:
        """The painter's equipment, as read last."""

    @property
    def jobs(self) -> OpenJobs:
        """The jobs that are open."""

    @property
    def alarms(self) -> Alarms:
        """What rings."""

    async def show(
        self,
        screen: OwnScreen[Any],
        then: Callable[[Any], Awaitable[None] | None] | None = None,
    ) -> None:
        """Open a screen; returns when it stands there."""

    async def command(self, id: str) -> None:
        """Do what a command asks for that is the same on every screen."""

    async def take_up(self, session: Session) -> None:
        """Put a job on the bench."""

    async def leave_job(self) -> None:
        """Back to the list of jobs."""

    def read_shop(self) -> tuple[Fault, ...]:
        """Read the shop file anew; give what is wrong with it."""

    def remember(self, key: str, value: str | bool) -> None:
        """Keep a preference for the next start."""

    def tick(self) -> None:
        """Draw now, and as often as is wanted from here on."""
