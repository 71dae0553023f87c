CREATE TABLE `extension_wish` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`booking_id` integer NOT NULL,
	`ends_before` text NOT NULL,
	`asked_by` text NOT NULL,
	`asked_at` text NOT NULL,
	`why_not` text NOT NULL,
	`settled` text DEFAULT '' NOT NULL,
	`settled_at` text DEFAULT '' NOT NULL,
	`settled_by` text DEFAULT '' NOT NULL,
	`answer` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`booking_id`) REFERENCES `booking`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE UNIQUE INDEX `extension_wish_waits` ON `extension_wish` (`booking_id`) WHERE settled = '';